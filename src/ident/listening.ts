import { MISSING_S } from './detector/heard-in.ts';
import { keyedToneIn, look } from './detector/look.ts';
import type { Look } from './detector/look.ts';
import { quietS, startTracker, toneS, track } from './detector/tracker.ts';
import type { Tracker } from './detector/tracker.ts';
import { CENTRE_HZ } from './front-end.ts';
import type { Confirmation, IdentHeard, Known } from './heard.ts';

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
  /** Level of the tone now, decibels below full scale; null in silence. */
  readonly toneLevelDb: number | null;
  readonly toneHz: number | null;
  readonly snrDb: number | null;
  /** Marks of the last half minute; those since the last whole ident are a first idea. */
  readonly marks: readonly MarkHeard[];
  readonly letters: string | null;
  readonly repeats: number;
  /** The ident as it is read by now, with why it is not; null before the first look. */
  readonly heard: IdentHeard | null;
  /** Null when no ident is expected, or before there was anything to judge. */
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
  readonly tracker: Tracker;
  lastLookS: number;
  lastTunedS: number;
  /** Seconds of tone that had been heard at the last look. */
  toneAtLookS: number;
  /** Whether an ident was under way at the last look. */
  wasKeyed: boolean;
  last: Look | null;
  /** Since when nothing at all has been keyed, seconds; null: something was at the last look. */
  nothingFromS: number | null;
}

/** How much of the past is looked at, seconds: two idents of a station that sends one every 10 s. */
const WINDOW_S = 26;

/** How much of the past shows where the tone is, seconds. */
const TUNE_ON_S = 4;

/** Quiet that ends an ident: four dots at 6 words a minute. A slower one is looked at once more. */
const END_S = 0.8;
const SLOW_END_S = 1.05;

/** Looks cost a third of a second of computing: so far apart at least, and at most, seconds. */
const LEAST_APART_S = 2.2;
const MOST_APART_S = 8;
const LONGEST_APART_S = 9;

/** Tone that makes another look worth while, seconds. */
const LEAST_TONE_S = 0.6;

/** Begins to listen. */
export function startListening(options: ListeningOptions): Listening {
  const size = Math.ceil(WINDOW_S * options.sampleRateHz);
  return {
    options,
    re: new Float64Array(size),
    im: new Float64Array(size),
    count: 0,
    dropped: 0,
    tracker: startTracker(options.sampleRateHz, 1020 - CENTRE_HZ),
    lastLookS: 0,
    lastTunedS: 0,
    toneAtLookS: 0,
    wasKeyed: false,
    last: null,
    nothingFromS: null,
  };
}

/**
 * Takes in the next complex samples of the front end (re, im, re, im ...); changes `listening` in place
 * and gives it back.
 *
 * Cheap while a mark is keyed; when an ident seems to have ended, the last 26 s are read as a whole.
 * `mayLook` false: only takes the sound in, where a listener has fallen behind.
 */
export function listenOn(listening: Listening, block: Float32Array, mayLook = true): Listening {
  const { re, im, tracker } = listening;
  for (let n = 0; n + 1 < block.length; n += 2) {
    if (listening.count === re.length) dropOldest(listening);
    const x = block[n] ?? 0;
    const y = block[n + 1] ?? 0;
    re[listening.count] = x;
    im[listening.count] = y;
    track(tracker, x, y, listening.dropped + listening.count);
    listening.count += 1;
  }
  if (mayLook) tuneTracker(listening);
  if (mayLook && isTimeToLook(listening)) lookNow(listening);
  return listening;
}

/** What is known by now. */
export function heardSoFar(listening: Listening): ListeningView {
  const { tracker, last } = listening;
  const now = {
    atS: atS(listening),
    toneLevelDb: tracker.quick.level > 1e-6 ? 20 * Math.log10(tracker.quick.level) : null,
    marks: marksOf(listening),
  };
  if (last === null) {
    const none = { toneHz: null, snrDb: null, letters: null, repeats: 0, heard: null };
    return { ...now, ...none, confirmation: null };
  }
  const { heard, confirmation } = last;
  const { toneHz, snrDb, letters, repeats } = heard;
  return { ...now, toneHz, snrDb, letters, repeats, heard, confirmation };
}

function atS({ dropped, count, options }: Listening): number {
  return (dropped + count) / options.sampleRateHz;
}

function dropOldest(listening: Listening): void {
  const drop = Math.ceil(listening.re.length / WINDOW_S);
  listening.re.copyWithin(0, drop);
  listening.im.copyWithin(0, drop);
  listening.count -= drop;
  listening.dropped += drop;
}

/** Once a second, while no ident has been read: the tracker goes to the tone that looks most keyed. */
function tuneTracker(listening: Listening): void {
  const { options, re, im, count, tracker } = listening;
  const nowS = atS(listening);
  if (nowS - listening.lastTunedS < 1) return;
  listening.lastTunedS = nowS;
  if ((listening.last?.likelihood ?? 0) > 0.5) return;
  const from = Math.max(0, count - Math.round(TUNE_ON_S * options.sampleRateHz));
  const tail = { re: re.subarray(from, count), im: im.subarray(from, count) };
  const offsetHz = keyedToneIn({ ...tail, rateHz: options.sampleRateHz });
  if (offsetHz !== null) tracker.offsetHz = offsetHz;
}

function isTimeToLook(listening: Listening): boolean {
  const sinceS = atS(listening) - listening.lastLookS;
  const quiet = quietS(listening.tracker) ?? Infinity;
  // In the middle of an ident a look is only in the way of the one at its end.
  if (quiet < END_S) return sinceS >= LONGEST_APART_S;
  if (sinceS >= MOST_APART_S) return true;
  const why = listening.last?.heard.why;
  // The first look may have come too soon for the quiet after a slow ident.
  const isCut = why === 'no-complete-ident' || why === 'uneven-keying';
  const isSlow = isCut && sinceS < 0.5 && quiet >= SLOW_END_S;
  const newToneS = toneS(listening.tracker) - listening.toneAtLookS;
  const isNew = newToneS >= LEAST_TONE_S || (listening.wasKeyed && newToneS > 0);
  return isSlow || (isNew && sinceS >= LEAST_APART_S);
}

function lookNow(listening: Listening): void {
  const { options, re, im, count, tracker } = listening;
  const stream = { re: re.subarray(0, count), im: im.subarray(0, count) };
  const { expected, known } = options;
  listening.lastLookS = atS(listening);
  listening.last = look(
    { ...stream, rateHz: options.sampleRateHz },
    { expected, known, startS: listening.dropped / options.sampleRateHz },
  );
  tellMissing(listening);
  const toneHz = listening.last.heard.toneHz ?? listening.last.loudestHz;
  if (toneHz !== null) tracker.offsetHz = toneHz - CENTRE_HZ;
  const oldestS = listening.lastLookS - WINDOW_S;
  tracker.marks.splice(0, tracker.marks.filter(({ endS }) => endS < oldestS).length);
  listening.toneAtLookS = toneS(tracker);
  listening.wasKeyed = (quietS(tracker) ?? Infinity) < END_S;
}

/** One look shows less than the longest interval between idents: several without any show that it is missing. */
function tellMissing(listening: Listening): void {
  const { last, lastLookS } = listening;
  if (last?.isStill !== true || last.heard.why !== 'no-complete-ident') {
    listening.nothingFromS = null;
    return;
  }
  listening.nothingFromS ??= Math.max(0, lastLookS - WINDOW_S);
  if (lastLookS - listening.nothingFromS < MISSING_S) return;
  const heard: IdentHeard = { ...last.heard, why: 'ident-missing' };
  const { confirmation } = last;
  const told = confirmation === null ? null : { ...confirmation, why: heard.why, detail: heard };
  listening.last = { ...last, heard, confirmation: told };
}

/** Marks as read at the last look, then those that the tracker has seen since. */
function marksOf({ last, tracker, lastLookS }: Listening): MarkHeard[] {
  const read = last?.marks ?? [];
  const dotS = last?.dotS ?? 0.17;
  const fromS = read.length === 0 ? 0 : lastLookS;
  const since = tracker.marks.filter(({ startS }) => startS >= fromS);
  return [
    ...read,
    ...since.map(({ startS, endS }): MarkHeard => ({
      startS,
      durationS: endS - startS,
      element: endS - startS > 2 * dotS ? 'dash' : 'dot',
    })),
  ];
}
