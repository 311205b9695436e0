import type { Analysis } from './analysis.ts';
import { fitOf } from './fit.ts';
import type { Fit } from './fit.ts';
import { heardAt } from './heard-at.ts';
import type { HeardAt } from './heard-at.ts';
import { lettersOfKey } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import { patternsOf } from './marks-of.ts';
import { isHandBetter } from './tone-reading.ts';
import type { ToneReading } from './tone-reading.ts';

/** How an ident stands up to a close look. */
export interface Judged {
  readonly key: IdentKey;
  /** The tone that speaks for it most. */
  readonly reading: ToneReading;
  readonly isByHand: boolean;
  /** Each time it was keyed on that tone. */
  readonly heard: readonly HeardAt[];
  /** At least once with quiet on both sides, so that no letter is missing. */
  readonly isWhole: boolean;
  /** Keyed so often that its elements are more than stray beeps. */
  readonly isLongEnough: boolean;
  /** Marks stand out, gaps are quiet, and there is enough evidence for each element. */
  readonly isClear: boolean;
  /** At least one that is whole is keyed in dots and dashes. */
  readonly isMorse: boolean;
  /** Another ident was heard at some time on some tone, for certain. */
  readonly isContradicted: boolean;
  /** Evidence of all times together for each element, nats. */
  readonly perElement: number;
  readonly fits: readonly Fit[];
}

/** Power between the marks, as a share of that in them, that an ident may have at most: -7 dB. */
const MOST_LEAK = 0.2;

/** The same before and after it, where its elements are all alike: a row of beeps holds such idents. */
const MOST_AROUND = 0.1;

/** Evidence that each element must have on the average, nats. */
const LEAST_PER_ELEMENT = 8;

/** Times that two letters of one element each must be heard. */
const OFTEN = 4;

/** Another ident must be this much more evident at one time to contradict, nats. */
const CONTRADICTION = 14;

/** A syllable may sound like a few dots: what contradicts has at least so many elements. */
const LEAST_ELEMENTS = 5;

/** How much a tone must be keyed beyond a steady one to contradict, nats. */
const LEAST_READING = 40;

/** Looks at one ident closely; null when nothing at all was keyed. */
export function judge(analysis: Analysis, key: IdentKey): Judged | null {
  const letters = lettersOfKey(key);
  const looks = analysis.readings.map((reading) => {
    const isByHand = isHandBetter(reading, key);
    const heard = heardAt(reading, letters, isByHand);
    return { reading, isByHand, heard, evidence: evidenceOf(heard) };
  });
  looks.sort((a, b) => b.evidence - a.evidence);
  const first = looks[0];
  if (first === undefined) return null;
  const { reading, isByHand, heard, evidence } = first;
  const own = heard.filter((each) => each.evidence > each.mostEvidence - CONTRADICTION);
  const fits = own.map((each) => fitOf(reading.frames, each));
  const pattern = patternsOf(letters).join('');
  const isAlike = new Set(pattern).size === 1;
  const whole = fits.filter((fit) => fit.isWhole && (!isAlike || isQuietAround(fit)));
  const elements = pattern.length;
  const isOnly = own.length === heard.length;
  const longEnough = isLongEnough(letters.length, elements, isOnly ? own.length : 0, own.length);
  const perElement = evidence / Math.max(1, elements);
  return {
    key,
    reading,
    isByHand,
    heard: own,
    isWhole: whole.length > 0,
    isLongEnough: longEnough,
    isClear: perElement >= LEAST_PER_ELEMENT && longEnough && whole.some(isQuietBetween),
    isMorse: whole.some((fit) => isQuietBetween(fit) && fit.isKeyedWell),
    isContradicted: analysis.hasOther || looks.some(isContradicted),
    perElement,
    fits,
  };
}

function isQuietBetween({ leak, leakError }: Fit): boolean {
  return leak <= MOST_LEAK + leakError;
}

function isQuietAround({ around, aroundError }: Fit): boolean {
  return around <= MOST_AROUND + aroundError;
}

/**
 * Whether so many elements, heard so often, cannot be a cough or a syllable: a few dots alone can.
 * Idents of one or two letters are rare, and must be heard again; three beeps are told as none, EE, ET,
 * TE and TT only when they are heard four times and nothing else is (`timesAlone`), A and N never.
 */
function isLongEnough(
  letters: number,
  elements: number,
  timesAlone: number,
  times: number,
): boolean {
  if (letters >= 3) return elements >= 4 && elements * times > letters;
  if (letters === 2 && elements === 2) return timesAlone >= OFTEN;
  return elements >= 3 && elements * times >= 6;
}

function evidenceOf(heard: readonly HeardAt[]): number {
  return heard.reduce((sum, { evidence }) => sum + Math.max(0, evidence), 0);
}

/** Whether something else was keyed whole at some time. */
function isContradicted(look: {
  readonly reading: ToneReading;
  readonly heard: readonly HeardAt[];
}): boolean {
  if (look.reading.score < LEAST_READING) return false;
  const { count } = look.reading.frames;
  return look.heard.some(({ marks, dotFrames, evidence, mostEvidence, mostElements }) => {
    const from = marks[0]?.from ?? 0;
    const to = marks.at(-1)?.to ?? count;
    const isInside = from > 4 * dotFrames && to < count - 4 * dotFrames;
    const isIdent = mostElements >= LEAST_ELEMENTS && mostEvidence > 60;
    return isInside && isIdent && mostEvidence - evidence > CONTRADICTION;
  });
}
