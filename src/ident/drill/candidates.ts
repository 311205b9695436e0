import { oneOf } from './chance.ts';
import { NEW_LETTER, recallAt } from './letter-strength.ts';
import { LETTERS, lettersOfGroups } from './letters.ts';
import { likeliestFor, type PairCounts } from './pairs.ts';
import type { Practice } from './practice.ts';

/** The idents that matter to the pilot now. */
export interface Around {
  /** Of the stations of the planned flight. */
  readonly route: readonly string[];
  /** Of the stations near it. */
  readonly near: readonly string[];
}

/** *Source:* a proposal of this project; nothing was measured on people. */
const WEIGHTS = { route: 3, near: 2, other: 1 } as const;

const MADE_UP = 40;
const IDENT_LENGTH = 3;

/** Written down fewer times than this a letter is asked by itself before it stands in an ident. */
const BY_ITSELF = 3;

/** Idents of single letters that the pilot is new to; empty when there are none. */
export function newLetters(practice: Practice): readonly string[] {
  return lettersOfGroups(practice.groups).filter(
    (letter) => (practice.letters.get(letter)?.recent.length ?? 0) < BY_ITSELF,
  );
}

/** Idents made up from the letters taken up so far. */
export function madeUpIdents(practice: Practice, chance: () => number): readonly string[] {
  const open = lettersOfGroups(practice.groups);
  return Array.from({ length: MADE_UP }, () =>
    Array.from({ length: IDENT_LENGTH }, () => oneOf(open, chance) ?? 'E').join(''),
  );
}

/** Idents of the flight and from near it, of letters only, that can be asked now. */
export function realIdents(
  practice: Practice,
  { route, near }: Around,
  isPlate: boolean,
): readonly string[] {
  const open = new Set(isPlate ? LETTERS : lettersOfGroups(practice.groups));
  return [...new Set([...route, ...near])].filter((ident) =>
    Array.from(ident).every((letter) => open.has(letter)),
  );
}

/** How much asking each letter now would teach: what has been forgotten, and how easily it is confused. */
export interface LetterWorth {
  readonly forgotten: number;
  readonly confused: number;
}

/** The worth of every letter at this time. */
export function letterWorths(practice: Practice, atMs: number): ReadonlyMap<string, LetterWorth> {
  return new Map(
    LETTERS.map((letter) => [
      letter,
      {
        forgotten: 1 - recallAt(practice.letters.get(letter) ?? NEW_LETTER, atMs),
        confused: confusedWithNearest(practice.pairs, letter),
      },
    ]),
  );
}

/**
 * How much asking this ident now would teach, no unit: what has been forgotten of its letters, times how
 * easily they are taken for others, times how soon it will be needed in earnest.
 *
 * *Source:* a proposal of this project; nothing was measured on people.
 */
export function worth(
  ident: string,
  letters: ReadonlyMap<string, LetterWorth>,
  around: Around,
): number {
  let forgotten = 0;
  let confused = 0;
  for (const letter of ident) {
    forgotten += letters.get(letter)?.forgotten ?? 0;
    confused += letters.get(letter)?.confused ?? 0;
  }
  return forgotten * (1 + confused) * weightOf(ident, around);
}

/** The chance that a letter is taken for one of the three that it is likeliest taken for. */
function confusedWithNearest(pairs: PairCounts, letter: string): number {
  return likeliestFor(pairs, letter, 3).reduce((sum, { chance }) => sum + chance, 0);
}

function weightOf(ident: string, { route, near }: Around): number {
  if (route.includes(ident)) return WEIGHTS.route;
  return near.includes(ident) ? WEIGHTS.near : WEIGHTS.other;
}
