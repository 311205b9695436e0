import { confirmStream, decodeStream } from './decode.ts';
import type { Confirmation, IdentHeard, Known } from './heard.ts';
import type { Stream } from './detector/stream.ts';

/** What is listened for. */
export interface ListeningOptions {
  /** Complex samples a second that the front end gives, about 1000. */
  readonly sampleRateHz: number;
  /** The ident that should be there; null when none is expected. */
  readonly expected: string | null;
  readonly known?: Known;
}

/** One mark of the tone as it was heard. */
export interface MarkHeard {
  /** Seconds since listening began. */
  readonly startS: number;
  readonly durationS: number;
  readonly element: 'dot' | 'dash';
}

/** What can be shown of a listening at one moment. */
export interface ListeningView {
  /** Seconds of sound taken in. */
  readonly atS: number;
  /** Level of the tone now, decibels below full scale; null while no tone is known. */
  readonly toneLevelDb: number | null;
  readonly toneHz: number | null;
  readonly snrDb: number | null;
  readonly marks: readonly MarkHeard[];
  readonly letters: string | null;
  readonly repeats: number;
  /** The ident as it is read by now, with why it is not; null before the first look. */
  readonly heard: IdentHeard | null;
  /** Null when no ident is expected. */
  readonly confirmation: Confirmation | null;
}

/** A listening under way. Its buffers change in place: keep only the newest. */
export interface Listening {
  readonly options: ListeningOptions;
  readonly re: Float64Array;
  readonly im: Float64Array;
  count: number;
  /** Samples that have fallen out of the window. */
  dropped: number;
  nextLook: number;
  view: ListeningView;
}

/** How much of the past is looked at, seconds. */
const WINDOW_S = 35;

/** How often it is looked at, seconds: until there is a verdict, and after that. */
const LOOK_EVERY_S = 1;
const LOOK_AGAIN_S = 4;

/** Begins to listen. */
export function startListening(options: ListeningOptions): Listening {
  const size = Math.ceil(WINDOW_S * options.sampleRateHz);
  return {
    options,
    re: new Float64Array(size),
    im: new Float64Array(size),
    count: 0,
    dropped: 0,
    nextLook: LOOK_EVERY_S * options.sampleRateHz,
    view: {
      atS: 0,
      toneLevelDb: null,
      toneHz: null,
      snrDb: null,
      marks: [],
      letters: null,
      repeats: 0,
      heard: null,
      confirmation: null,
    },
  };
}

/**
 * Takes in the next complex samples of the front end (re, im, re, im ...); changes `listening` in place
 * and gives it back. `mayLook` false: only takes them in, where a listener has fallen behind; what is due
 * is looked at with the next block that may.
 */
export function listenOn(listening: Listening, block: Float32Array, mayLook = true): Listening {
  const { re, im } = listening;
  for (let n = 0; n + 1 < block.length; n += 2) {
    if (listening.count === re.length) dropOldest(listening);
    re[listening.count] = block[n] ?? 0;
    im[listening.count] = block[n + 1] ?? 0;
    listening.count += 1;
  }
  const isDue = listening.dropped + listening.count >= listening.nextLook;
  if (isDue && mayLook) look(listening);
  return listening;
}

/** What is known by now. */
export function heardSoFar(listening: Listening): ListeningView {
  return listening.view;
}

function dropOldest(listening: Listening): void {
  const drop = Math.ceil(listening.re.length / 35);
  listening.re.copyWithin(0, drop);
  listening.im.copyWithin(0, drop);
  listening.count -= drop;
  listening.dropped += drop;
}

function look(listening: Listening): void {
  const { options, re, im, count, dropped } = listening;
  const rateHz = options.sampleRateHz;
  const stream: Stream = { re: re.subarray(0, count), im: im.subarray(0, count), rateHz };
  const { expected, known } = options;
  const confirmation = expected === null ? null : confirmStream(stream, expected, known);
  const heard = confirmation?.detail ?? decodeStream(stream, known);
  const isSettled = confirmation !== null && confirmation.verdict !== 'cannot-tell';
  listening.nextLook = dropped + count + (isSettled ? LOOK_AGAIN_S : LOOK_EVERY_S) * rateHz;
  listening.view = {
    atS: (dropped + count) / rateHz,
    toneLevelDb: null,
    toneHz: heard.toneHz,
    snrDb: heard.snrDb,
    marks: [],
    letters: heard.letters,
    repeats: heard.repeats,
    heard,
    confirmation,
  };
}
