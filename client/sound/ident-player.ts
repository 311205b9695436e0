import { signal, type ReadonlySignal } from '@preact/signals';
import { identTimeline, repeatedTimeline, timelineLengthS } from '../../src/ident/timeline.ts';
import { claimSound } from './claim.ts';
import type { KeyedTone } from './keyed-tone.ts';

/** How an ident is keyed. */
export interface IdentSound {
  /** Words per minute (PARIS). */
  readonly wpm: number;
  /** 1020 for the ident of a VOR. */
  readonly toneHz: number;
  readonly repeats: number;
  /** 0 to 1. */
  readonly volume: number;
}

/** A sound that is being played. */
export interface PlayingSound {
  stop(): void;
  /** Settles when the sound has ended or was stopped; rejects with a sentence when there can be no sound. */
  readonly done: Promise<void>;
}

/** An ident that is being played. */
export interface PlayingIdent extends PlayingSound {
  /** Index of the dot or dash that sounds now (counted anew in each repeat); null between them. */
  readonly marks: ReadonlySignal<number | null>;
}

/** Samples to be played: mono, -1 to 1. */
export interface Samples {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
}

/** Quiet after the last mark before anything is spoken. */
const REST_S = 0.5;

/** Shorter than the interval of a transmitter: somebody is waiting to compare. */
const INTERVAL_S = 4;

/** Output that stands still this long has been put to sleep by the system. */
const ASLEEP_MS = 4000;

/** Keys an ident as sound; nothing is spoken meanwhile. Call it from a tap or a key. */
export function playIdent(ident: string, sound: IdentSound): PlayingIdent {
  const marks = signal<number | null>(null);
  const playing = claimed((stop) => play(ident, sound, marks, stop));
  return { ...playing, marks };
}

/** Plays samples as they are; nothing is spoken meanwhile. `look` is told the time in them as they sound. */
export function playSamples(
  { samples, sampleRateHz }: Samples,
  volume: number,
  look: (nowS: number) => void = () => undefined,
): PlayingSound {
  return claimed(async (stop) => {
    const { soundSamples } = await loadOutput();
    if (stop.aborted) return;
    const tone = await soundSamples(samples, sampleRateHz, volume);
    await followTone(tone, samples.length / sampleRateHz, stop, look);
    tone.stop();
  });
}

function claimed(run: (stop: AbortSignal) => Promise<void>): PlayingSound {
  const release = claimSound();
  const stopping = new AbortController();
  const done = run(stopping.signal).finally(release);
  // Whoever does not look at `done` hears the silence.
  done.catch(() => undefined);
  return {
    stop: () => {
      stopping.abort();
    },
    done,
  };
}

const loadOutput = () =>
  import('./keyed-tone.ts').catch((reason: unknown) => {
    throw new Error('The sound could not be loaded: is the server gone?', { cause: reason });
  });

async function play(
  ident: string,
  { wpm, toneHz, repeats, volume }: IdentSound,
  marks: { value: number | null },
  stop: AbortSignal,
): Promise<void> {
  const { keyTone } = await loadOutput();
  const timeline = repeatedTimeline(ident, { wpm, repeats, intervalS: INTERVAL_S });
  const perRepeat = identTimeline(ident, { wpm }).length;
  if (stop.aborted || perRepeat === 0) return;
  const tone = await keyTone(timeline, toneHz, volume);
  const endS = timelineLengthS(timeline) + REST_S;
  await followTone(tone, endS, stop, (nowS) => {
    const index = timeline.findLastIndex(
      ({ startS, durationS }) => startS <= nowS && nowS < startS + durationS,
    );
    marks.value = index < 0 ? null : index % perRepeat;
  });
  marks.value = null;
  tone.stop();
}

/** Looks at the clock of the sound until it is over, stopped or asleep. */
function followTone(
  tone: KeyedTone,
  endS: number,
  stop: AbortSignal,
  look: (nowS: number) => void,
): Promise<void> {
  return new Promise((resolve) => {
    let lastS = Number.NEGATIVE_INFINITY;
    let movedAtMs = performance.now();
    // Not by animation frames: those stop in a tab that is not in front, the sound does not.
    const timer = setInterval(() => {
      const nowS = tone.nowS();
      if (nowS > lastS) movedAtMs = performance.now();
      lastS = nowS;
      look(nowS);
      if (nowS >= endS || performance.now() - movedAtMs > ASLEEP_MS) end();
    }, 20);
    const end = (): void => {
      clearInterval(timer);
      resolve();
    };
    if (stop.aborted) end();
    stop.addEventListener('abort', end);
  });
}
