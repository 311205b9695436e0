import { decimalFigureAt, figuresAt, isDecimalWordAt, rowAt } from './figures.ts';
import type { Figures } from './figures.ts';
import { NO, SHOWS, refused, took } from './grammar.ts';
import type { Parse } from './grammar.ts';
import { distancePhrase } from './read-back.ts';
import type { Token } from './tokens.ts';
import { skipWords, wordAt, wordsAt } from './tokens.ts';

const NAMES: ReadonlySet<string> = new Set(['distance', 'dist', 'dme']);
const MILES: ReadonlySet<string> = new Set(['nautical', 'miles', 'mile', 'nm']);

/** What may follow the figures of a needle; and "to", which sounds like one more figure. */
const RUN_ON_WORDS: ReadonlySet<string> = new Set([
  ...['left', 'right', 'l', 'r'],
  ...['dot', 'dots', 'half', 'to'],
]);

/** The farthest that a DME shows, NM. */
const FARTHEST_NM = 200;

/**
 * "distance one one decimal two", "dme 7.2", "distance seven miles", "dme 14".
 *
 * To a tenth, 0 to 200 NM. Without its decimal a row of spoken figures must not run into what
 * follows ("distance one one two left" is refused).
 */
export function distancePhraseAt(tokens: readonly Token[], at: number): Parse {
  if (!NAMES.has(wordAt(tokens, at))) return NO;
  const from = skipWords(tokens, at + 1, SHOWS);
  const found = milesAt(tokens, from);
  if (found === null) return refused('distance needs its figures, like one one decimal two');
  const next = skipWords(tokens, found.next, MILES);
  const runsOn = next === found.next && !found.isTyped && !found.figures.includes('.');
  if (runsOn && isRunOn(tokens, next)) {
    return refused('distance needs its decimal when more follows, like one one decimal two');
  }
  return distanceTook(found.figures, next);
}

/** A distance by its unit alone: "7.2 miles", "seven decimal two nautical miles". */
export function milesPhraseAt(tokens: readonly Token[], at: number): Parse {
  const found = milesAt(tokens, at);
  if (found === null) return NO;
  const next = skipWords(tokens, found.next, MILES);
  return next === found.next ? NO : distanceTook(found.figures, next);
}

function distanceTook(figures: string, next: number): Parse {
  const [, tenths = ''] = figures.split('.');
  if (tenths.length > 1) return refused(`distance is read to a tenth of a mile, not ${figures}`);
  const distanceNm = Number(figures);
  if (distanceNm > FARTHEST_NM) {
    return refused(`distance ${figures} is farther than a DME shows (${FARTHEST_NM} miles)`);
  }
  return took({ text: distancePhrase(distanceNm), reading: { dmeNm: distanceNm } }, next);
}

function milesAt(tokens: readonly Token[], at: number): Figures | null {
  const row = rowAt(tokens, at, 3);
  const first = figuresAt(tokens, at);
  const whole = first?.isTyped === true && first.figures.length > 1 ? first : row;
  const tenth = decimalFigureAt(tokens, whole.next);
  if (tenth !== null && !whole.figures.includes('.')) {
    const figures = `${whole.figures === '' ? '0' : whole.figures}.${tenth.figures}`;
    return { figures, isTyped: whole.isTyped, next: tenth.next };
  }
  if (isDecimalWordAt(tokens, whole.next)) return null;
  // Typed figures with blanks between them are separate numbers; only spoken ones make a row.
  const found = first?.isTyped === true ? first : row;
  return found.figures === '' ? null : found;
}

function isRunOn(tokens: readonly Token[], at: number): boolean {
  return (
    RUN_ON_WORDS.has(wordAt(tokens, at)) ||
    wordsAt(tokens, at, ['and', 'a', 'half']) ||
    wordsAt(tokens, at, ['and', 'half'])
  );
}
