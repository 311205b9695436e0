import { frontEndStep, startFrontEnd } from '../../src/ident/front-end.ts';
import { BLOCK_SAMPLES, openBlockPool } from './block-pool.ts';
import type { ToFrontEnd } from './ear-messages.ts';
import { FRONT_END, type WorkletScope } from './worklet-scope.ts';

// Runs in the audio thread: takes the sound down to about 1000 complex samples a second and sends them
// on in blocks. Nothing is made anew in `process`: a collection of garbage there would be heard.

const scope = globalThis as unknown as WorkletScope;

const QUANTUM = 128;

class FrontEndProcessor extends scope.AudioWorkletProcessor {
  readonly #frontEnd = startFrontEnd(scope.sampleRate);
  readonly #pool = openBlockPool();
  readonly #silence = new Float32Array(QUANTUM);
  readonly #quantum = new Float32Array(2 * (QUANTUM + 1));
  readonly #transfer: ArrayBuffer[] = [];
  #blocks: MessagePort | null = null;
  #block = this.#pool.take();
  #filled = 0;
  #isOver = false;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<ToFrontEnd>): void => {
      this.#isOver = data.blocks === null;
      this.#blocks = data.blocks;
      if (data.blocks === null) return;
      data.blocks.onmessage = (back: MessageEvent<Float32Array<ArrayBuffer>>): void => {
        this.#pool.giveBack(back.data);
      };
    };
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    if (this.#blocks === null) return !this.#isOver;
    // Without a source the input has no channel; time goes on all the same.
    const sound = inputs[0]?.[0] ?? this.#silence;
    const count = 2 * frontEndStep(this.#frontEnd, sound, this.#quantum);
    for (let n = 0; n < count; n += 1) {
      this.#block[this.#filled] = this.#quantum[n] ?? 0;
      this.#filled += 1;
      if (this.#filled === 2 * BLOCK_SAMPLES) this.#send(this.#blocks);
    }
    return true;
  }

  #send(blocks: MessagePort): void {
    this.#transfer[0] = this.#block.buffer;
    blocks.postMessage(this.#block, this.#transfer);
    this.#block = this.#pool.take();
    this.#filled = 0;
  }
}

scope.registerProcessor(FRONT_END, FrontEndProcessor);
