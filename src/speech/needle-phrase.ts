import { assert } from '../base/assert.ts';
import { decimalFigureAt, figuresAt } from './figures.ts';
import { NO, SHOWS, refused, took } from './grammar.ts';
import type { Parse } from './grammar.ts';
import type { HearingScale } from './heard.ts';
import { fullScalePhrase, needlePhrase } from './read-back.ts';
import type { Token } from './tokens.ts';
import { skipWords, wordAt, wordsAt } from './tokens.ts';

interface Amount {
  readonly dots: number;
  readonly isFullScale: boolean;
  readonly next: number;
}

interface Side {
  readonly sign: -1 | 1;
  readonly next: number;
}

const NAMES: ReadonlySet<string> = new Set(['needle', 'cdi']);
const DOTS: ReadonlySet<string> = new Set(['dot', 'dots']);
const CENTRED: ReadonlySet<string> = new Set(['centred', 'centered', 'centre', 'center']);
const LEFT: ReadonlySet<string> = new Set(['left', 'l']);
const RIGHT: ReadonlySet<string> = new Set(['right', 'r']);

/** Longest first: the words of an amount that are not figures. */
const HALVES = [['half', 'a'], ['a', 'half'], ['one', 'half'], ['half']] as const;
const AND_HALVES = [
  ['and', 'a', 'half'],
  ['and', 'one', 'half'],
  ['and', 'half'],
] as const;
const FULL_SCALES = [['full', 'scale'], ['full', 'deflection'], ['full']] as const;

/**
 * "needle one and a half left", "half right", "1.5 l", "needle left two", "needle centred", "full scale
 * left"; the word "needle" may be left out.
 *
 * In half dots up to full scale, negative left. An amount without a side, a side without an amount,
 * finer steps and more than full scale are refused.
 */
export function needlePhraseAt(tokens: readonly Token[], at: number, scale: HearingScale): Parse {
  assert(scale.dotsFullScale > 0, `full deflection is some dots, not ${scale.dotsFullScale}`);
  const isNamed = NAMES.has(wordAt(tokens, at));
  const from = isNamed ? skipWords(tokens, at + 1, SHOWS) : at;
  if (CENTRED.has(wordAt(tokens, from))) {
    return took({ text: needlePhrase(0), reading: { needleDots: 0 } }, from + 1);
  }
  const amount = amountAt(tokens, from, scale);
  if (amount !== null) return amountThenSide(tokens, amount, isNamed, scale);
  const side = sideAt(tokens, from);
  if (side !== null) return sideThenAmount(tokens, side, scale);
  return isNamed ? refused('needle: how many dots, and left or right?') : NO;
}

function amountThenSide(
  tokens: readonly Token[],
  amount: Amount,
  isNamed: boolean,
  scale: HearingScale,
): Parse {
  const side = sideAt(tokens, amount.next);
  if (side !== null) return deflection(amount, side.sign, side.next, scale);
  if (isNamed && amount.dots === 0) return deflection(amount, 1, amount.next, scale);
  const isNeedle = isNamed || amount.isFullScale || isDotsBefore(tokens, amount.next);
  return isNeedle ? refused('needle: left or right?') : NO;
}

function sideThenAmount(tokens: readonly Token[], side: Side, scale: HearingScale): Parse {
  const amount = amountAt(tokens, side.next, scale);
  if (amount === null) {
    return refused(`needle ${side.sign < 0 ? 'left' : 'right'}: by how many dots?`);
  }
  return deflection(amount, side.sign, amount.next, scale);
}

function deflection(amount: Amount, sign: -1 | 1, next: number, scale: HearingScale): Parse {
  const { dots, isFullScale } = amount;
  if (!isFullScale && dots > scale.dotsFullScale) {
    return refused(`needle ${dots} dots is past full scale, which is ${scale.dotsFullScale}`);
  }
  if (!isFullScale && dots * 2 !== Math.round(dots * 2)) {
    return refused(`needle is read in half dots, not ${dots}`);
  }
  const needleDots = dots === 0 ? 0 : sign * dots;
  const text = isFullScale ? fullScalePhrase(needleDots) : needlePhrase(needleDots);
  return took({ text, reading: { needleDots } }, next);
}

function amountAt(tokens: readonly Token[], at: number, scale: HearingScale): Amount | null {
  const full = phraseEnd(tokens, at, FULL_SCALES);
  if (full !== null) return { dots: scale.dotsFullScale, isFullScale: true, next: full };
  const half = phraseEnd(tokens, at, HALVES);
  if (half !== null) return dotsEnd(tokens, 0.5, half);
  const first = figuresAt(tokens, at);
  if (first === null) return null;
  const dots = Number(first.figures);
  const andHalf = phraseEnd(tokens, first.next, AND_HALVES);
  if (andHalf !== null && Number.isInteger(dots)) return dotsEnd(tokens, dots + 0.5, andHalf);
  const tenth = decimalFigureAt(tokens, first.next);
  return tenth === null
    ? dotsEnd(tokens, dots, first.next)
    : dotsEnd(tokens, Number(`${first.figures}.${tenth.figures}`), tenth.next);
}

function dotsEnd(tokens: readonly Token[], dots: number, at: number): Amount {
  return { dots, isFullScale: false, next: skipWords(tokens, at, DOTS) };
}

function isDotsBefore(tokens: readonly Token[], at: number): boolean {
  const word = wordAt(tokens, at - 1);
  return DOTS.has(word) || word === 'half';
}

function sideAt(tokens: readonly Token[], at: number): Side | null {
  const from = wordsAt(tokens, at, ['to', 'the']) ? at + 2 : at;
  if (LEFT.has(wordAt(tokens, from))) return { sign: -1, next: from + 1 };
  if (RIGHT.has(wordAt(tokens, from))) return { sign: 1, next: from + 1 };
  return null;
}

/** The place behind the first of these phrases that stands here, or null. */
function phraseEnd(
  tokens: readonly Token[],
  at: number,
  phrases: readonly (readonly string[])[],
): number | null {
  const found = phrases.find((phrase) => wordsAt(tokens, at, phrase));
  return found === undefined ? null : at + found.length;
}
