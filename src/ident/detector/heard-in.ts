import { CENTRE_HZ } from '../front-end.ts';
import type { IdentHeard, LetterHeard, Why } from '../heard.ts';
import { isEvenlyPulsed } from './even-pulses.ts';
import { judge } from './judged.ts';
import type { Judged } from './judged.ts';
import type { Analysis } from './analysis.ts';
import { lettersOfKey } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import { LETTERS } from './letter-tree.ts';
import type { Listened } from './listened.ts';
import { loudestLine } from './loudest-line.ts';
import type { LoudestLine } from './loudest-line.ts';
import { quantile } from './order.ts';
import { letterShare, likeliestOf, textOfKey } from './posterior.ts';
import type { Posterior } from './posterior.ts';
import { marksOfReading } from './tone-reading.ts';
import type { ToneReading } from './tone-reading.ts';

/** An ident less probable than this is not named: about one in a hundred names is wrong then. */
const LEAST_CONFIDENCE = 0.9;

/** With less evidence than this for each element, nats, or when none is likelier, nothing was keyed. */
const LEAST_TO_GUESS = 8;
const LEAST_KEYED = 0.5;

/** From so much evidence for each element on, nats, it is not weakness that keeps an ident from being told. */
const STRONG = 20;

/** Between 1020 Hz of a VOR and 1350 Hz of a DME. *Source:* AIM 1-1-7 f. */
const BETWEEN_TONES_HZ = 1185;

/** Evidence from which an ident counts as keyed once more, nats. */
const HEARD_AGAIN = 30;

/** A VOR sends its ident at least every 30 s: after so long without any keying, it is missing. */
export const MISSING_S = 30;

const TOO_SHORT_S = 2.5;

/** Amplitude of the whole stream under which there is nothing to hear: 80 dB below full scale. */
const SILENT = 1e-4;

/** Samples of the stream until the front end is full: a held level makes a click there. */
const STARTING = 30;

/** What a recording says, with the close look at its likeliest ident. */
export interface Told {
  readonly heard: IdentHeard;
  readonly best: Judged | null;
  /** How probable the likeliest ident is, told or not. */
  readonly likelihood: number;
  /** Not even a mark stands out. */
  readonly isStill: boolean;
}

/** Puts what was found into words and figures. */
export function heardIn(listened: Listened, analysis: Analysis, posterior: Posterior): Told {
  const key = likeliestOf(posterior);
  const likelihood = key === null ? 0 : (posterior.get(key) ?? 0);
  const best = key === null ? null : judge(analysis, key);
  const line = loudestLine(listened.coarse);
  if (analysis.readings.some(isEvenlyPulsed)) {
    const heard = { ...NOTHING, why: 'even-pulses' as const };
    return { heard, best: null, likelihood: 0, isStill: false };
  }
  if (key === null || best === null || isNothing(best, posterior, line)) {
    const isStill = isFaint(best) && line === null;
    const heard = { ...NOTHING, why: whyNothing(listened, line, isStill) };
    return { heard, best: null, likelihood: 0, isStill };
  }
  const why = whyUnsure(listened, best, likelihood);
  const isTold = why === null;
  const text = textOfKey(key);
  const heard: IdentHeard = {
    letters: isTold ? text : null,
    confidence: isTold ? shareOf(likelihood) : 0,
    toneHz: best.reading.tone.offsetHz + CENTRE_HZ,
    wpm: wpmOf(best),
    repeats: repeatsOf(analysis, best),
    snrDb: snrDbOf(best),
    perLetter: perLetterOf(posterior, key),
    why: isTold ? whyWarned(text, isOnDmeAlone(analysis, best)) : why,
  };
  return { heard, best, likelihood, isStill: false };
}

/** A probability to three decimals, never quite 1: nothing that is heard is certain. */
export function shareOf(probability: number): number {
  return Math.min(0.999, Math.round(1000 * probability) / 1000);
}

function perLetterOf(posterior: Posterior, key: IdentKey): LetterHeard[] {
  return lettersOfKey(key).flatMap((each, at): LetterHeard[] => {
    const letter = LETTERS[each];
    if (letter === undefined) return [];
    const confidence = shareOf(letterShare(posterior, key, at));
    return [{ letter: letter.letter, confidence, pattern: letter.pattern }];
  });
}

/** Whether even the likeliest ident is only noise, a tone that never stops, or what spills from another tone. */
function isNothing(best: Judged, posterior: Posterior, line: LoudestLine | null): boolean {
  let keyed = 0;
  for (const share of posterior.values()) keyed += share;
  if (keyed < LEAST_KEYED || best.perElement < LEAST_TO_GUESS) return true;
  if (line === null || (best.isWhole && best.isClear && line.isInBand)) return false;
  return line.isSteady || !line.isInBand;
}

/** What has to be known of an ident that is told; null: nothing. */
function whyWarned(text: string, isDmeAlone: boolean): Why | null {
  if (text === 'TEST') return 'test-code';
  return isDmeAlone ? 'dme-only' : null;
}

/** Whether the ident was keyed on the tone of a DME and never on that of a VOR: then the VOR may be off the air. */
function isOnDmeAlone(analysis: Analysis, best: Judged): boolean {
  const onVor = analysis.readings.filter(
    ({ tone }) => tone.offsetHz + CENTRE_HZ < BETWEEN_TONES_HZ,
  );
  if (best.reading.tone.offsetHz + CENTRE_HZ < BETWEEN_TONES_HZ) return false;
  const heard = onVor.flatMap(
    (reading) => judge({ ...analysis, readings: [reading] }, best.key)?.heard ?? [],
  );
  return !heard.some(({ evidence }) => evidence > HEARD_AGAIN);
}

/** Why the likeliest ident is not told; null when it is. */
function whyUnsure(listened: Listened, best: Judged, likelihood: number): Why | null {
  if (best.isContradicted) return 'two-at-once';
  if (likelihood < LEAST_CONFIDENCE) return whyUnlikely(listened, best);
  if (!best.isWhole) return 'no-complete-ident';
  if (best.isClear && best.isMorse) return null;
  if (hasVoice(listened, best.reading)) return 'voice-over-it';
  if (!best.isLongEnough && best.perElement >= STRONG) return 'too-few-elements';
  return best.isClear ? 'uneven-keying' : 'too-weak';
}

function whyUnlikely(listened: Listened, best: Judged): Why {
  if (hasVoice(listened, best.reading)) return 'voice-over-it';
  if (!best.isWhole) return 'no-complete-ident';
  return best.perElement < STRONG ? 'too-weak' : 'not-sure-yet';
}

function lengthOf({ stream }: Listened): number {
  return stream.re.length / stream.rateHz;
}

function isFaint(best: Judged | null): boolean {
  return best === null || best.perElement < LEAST_TO_GUESS;
}

function peakOf({ stream }: Listened): number {
  let peak = 0;
  for (let n = STARTING; n < stream.re.length; n += 1) {
    peak = Math.max(peak, Math.abs(stream.re[n] ?? 0), Math.abs(stream.im[n] ?? 0));
  }
  return peak;
}

function whyNothing(listened: Listened, line: LoudestLine | null, isStill: boolean): Why {
  if (lengthOf(listened) < TOO_SHORT_S) return 'too-short';
  if (peakOf(listened) < SILENT) return 'silent';
  if (line?.isSteady === true) return 'steady-tone';
  if (line?.isInBand === false) return 'off-tone';
  if (hasVoice(listened, null)) return 'voice-over-it';
  return isStill && lengthOf(listened) >= MISSING_S ? 'ident-missing' : 'no-complete-ident';
}

/** A mark's rise and fall is heard beside its tone for so long, seconds. */
const CLICK_S = 0.1;

/**
 * Whether the noise beside the tone rises by 10 dB again and again, as speech makes it do.
 *
 * Where the marks read rise and fall, which is heard beside the tone as well, does not count.
 */
function hasVoice(listened: Listened, reading: ToneReading | null): boolean {
  const { factor, hopS } = listened.besideAt(1020 - CENTRE_HZ);
  const frameS = reading?.frames.frameS ?? 0;
  const marks = reading === null ? [] : marksOfReading(reading);
  const edges = marks.flatMap(({ from, to }) => [from * frameS, to * frameS]);
  const away = factor.filter((_, n) =>
    edges.every((edgeS) => Math.abs((n + 1) * hopS - edgeS) > CLICK_S),
  );
  return quantile(away, 0.85) > 10;
}

function wpmOf({ heard, reading }: Judged): number | null {
  const first = heard[0];
  return first === undefined ? null : 1.2 / (first.dotFrames * reading.frames.frameS);
}

/** Each time it was keyed, on either tone. */
function repeatsOf(analysis: Analysis, best: Judged): number {
  const others = analysis.readings.filter((reading) => reading !== best.reading);
  const elsewhere = others.flatMap(
    (reading) => judge({ ...analysis, readings: [reading] }, best.key)?.heard ?? [],
  );
  return best.heard.length + elsewhere.filter(({ evidence }) => evidence > HEARD_AGAIN).length;
}

/** Tone over noise in 3 kHz: what a frame holds, spread over its own bandwidth. */
function snrDbOf({ reading }: Judged): number {
  const { noise, frameS } = reading.frames;
  const noise3k = quantile(noise, 0.5) * frameS * 3000;
  return 10 * Math.log10(reading.meanAmplitude ** 2 / Math.max(noise3k, 1e-30));
}

const NOTHING: IdentHeard = {
  letters: null,
  confidence: 0,
  toneHz: null,
  wpm: null,
  repeats: 0,
  snrDb: null,
  perLetter: [],
  why: 'no-complete-ident',
};
