// The way to the samples that is called deprecated: an AudioWorklet would have to be fetched as a script of
// its own, and the page’s security policy rightly lets none in.
/* eslint-disable @typescript-eslint/no-deprecated */
import type { Page } from 'playwright-core';

/** What reached the loudspeaker in one short window. */
export interface Heard {
  /** By the clock of the page, milliseconds. */
  readonly atMs: number;
  /** Root mean square of the samples, full scale 1. */
  readonly level: number;
  /** Share of the power that lies at 1020 Hz, 0 to 1. */
  readonly toneShare: number;
}

declare global {
  // Only in pages that the tap was put into.
  var heardSamples: {
    readonly atMs: number;
    readonly rateHz: number;
    readonly samples: Float32Array;
  }[];
}

/** Put into a page before anything of it: keeps a copy of all that is sent to the loudspeaker. */
export function tapSound(): void {
  globalThis.heardSamples = [];
  const taps = new WeakMap<BaseAudioContext, ScriptProcessorNode>();
  // The browser’s own way to connect, kept aside.
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
  const tapOf = (context: BaseAudioContext): ScriptProcessorNode => {
    const found = taps.get(context);
    if (found !== undefined) return found;
    const tap = context.createScriptProcessor(8192, 1, 1);
    tap.onaudioprocess = ({ inputBuffer, playbackTime }) => {
      const samples = Float32Array.from(inputBuffer.getChannelData(0));
      const atMs = performance.now() + 1000 * (playbackTime - context.currentTime);
      globalThis.heardSamples.push({ atMs, rateHz: inputBuffer.sampleRate, samples });
    };
    connect.call(tap, context.destination);
    taps.set(context, tap);
    return tap;
  };
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode, ...rest: number[]) {
    if (to instanceof AudioDestinationNode) connect.call(this, tapOf(to.context));
    return Reflect.apply(connect, this, [to, ...rest]) as AudioNode;
  } as typeof AudioNode.prototype.connect;
}

const WINDOW_S = 0.01;

/**
 * What was heard so far, in windows of 10 ms. The share at 1020 Hz (the ident of a VOR, ICAO Annex 10
 * volume I, 3.3.6.2, from memory) is found with the Goertzel algorithm.
 */
export function heardSoFar(page: Page): Promise<readonly Heard[]> {
  return page.evaluate((windowS) => {
    const heard: Heard[] = [];
    for (const { atMs, rateHz, samples } of globalThis.heardSamples) {
      const length = Math.round(rateHz * windowS);
      const step = 2 * Math.cos((2 * Math.PI * 1020) / rateHz);
      for (let from = 0; from + length <= samples.length; from += length) {
        let power = 0;
        let [one, two] = [0, 0];
        for (const sample of samples.subarray(from, from + length)) {
          power += sample * sample;
          [one, two] = [sample + step * one - two, one];
        }
        const atTone = (2 * (one * one + two * two - step * one * two)) / length;
        heard.push({
          atMs: atMs + (1000 * from) / rateHz,
          level: Math.sqrt(power / length),
          toneShare: power === 0 ? 0 : Math.min(1, atTone / power),
        });
      }
    }
    return heard;
  }, WINDOW_S);
}

/** Louder than this is a sound. */
const LEAST_LEVEL = 0.01;

/** True for a window with sound in it. */
export const isSound = ({ level }: Heard): boolean => level > LEAST_LEVEL;

/** True for a window in which a keyed tone of 1020 Hz sounds alone. */
export const isTone = (heard: Heard): boolean => isSound(heard) && heard.toneShare > 0.7;

/** Length of all sound so far, seconds. */
export async function soundS(page: Page): Promise<number> {
  return (await heardSoFar(page)).filter(isSound).length * WINDOW_S;
}

/** Waits until nothing has sounded for so long. */
export async function quiet(page: Page, forMs: number): Promise<void> {
  await page.waitForFunction(
    ([least, ms]) => {
      const loud = globalThis.heardSamples.findLast(({ samples }) =>
        samples.some((sample) => Math.abs(sample) > least),
      );
      const last = globalThis.heardSamples.at(-1);
      return loud !== undefined && last !== undefined && last.atMs - loud.atMs > ms;
    },
    [LEAST_LEVEL, forMs] as const,
    { timeout: 60_000 },
  );
}

/** The keying of a tone in dots and dashes, letters apart by blanks, as it was heard. */
export function keyingOf(heard: readonly Heard[], wpm: number): string {
  // One dot lasts 1.2 s / wpm (PARIS); dash 3, between letters 3 dots: ITU-R M.1677-1, part I, 2.
  const dotS = 1.2 / wpm;
  let keying = '';
  let run = { isOn: false, count: 0 };
  const end = (): void => {
    const dots = (run.count * WINDOW_S) / dotS;
    if (run.isOn) keying += dots < 2 ? '.' : '-';
    else if (keying !== '' && dots > 2) keying += dots < 10 ? ' ' : ' / ';
  };
  for (const each of heard) {
    const isOn = isTone(each);
    if (isOn !== run.isOn) {
      end();
      run = { isOn, count: 0 };
    }
    run.count += 1;
  }
  if (run.isOn) end();
  return keying.trim();
}
