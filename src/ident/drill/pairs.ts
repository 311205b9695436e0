import { LETTERS } from './letters.ts';
import { similarity } from './similarity.ts';

/** How often which letter was answered for which: the letter sent, then the letter answered ("DK"). */
export type PairCounts = ReadonlyMap<string, number>;

/** Weight of the listening data against the pilot's own answers, in answers. */
const PRIOR_WEIGHT = 3;
const PRIOR_RIGHT = 9;

const priorOf = new Map(
  LETTERS.map((sent) => [
    sent,
    LETTERS.map((answered) => [answered, priorCount(sent, answered)] as const),
  ]),
);

function priorCount(sent: string, answered: string): number {
  return sent === answered ? PRIOR_RIGHT : PRIOR_WEIGHT * similarity(sent, answered);
}

/**
 * The chance that the pilot takes a letter for another, 0 to 1: own answers weighed against the prior.
 *
 * *Source:* mean of a Dirichlet distribution whose prior counts are 3 x similarity for each other letter
 * and 9 for the letter itself; a proposal of this project.
 */
export function confusionChance(counts: PairCounts, sent: string, answered: string): number {
  return chancesFor(counts, sent).find(({ letter }) => letter === answered)?.chance ?? 0;
}

/** A letter with the chance that it is answered. */
export interface LikelyLetter {
  readonly letter: string;
  readonly chance: number;
}

function chancesFor(counts: PairCounts, sent: string): readonly LikelyLetter[] {
  const row = (priorOf.get(sent) ?? []).map(([letter, prior]) => ({
    letter,
    count: prior + (counts.get(sent + letter) ?? 0),
  }));
  const all = row.reduce((sum, { count }) => sum + count, 0);
  return row.map(({ letter, count }) => ({ letter, chance: count / all }));
}

/** The letters that a letter is most likely taken for, the likeliest first. */
export function likeliestFor(
  counts: PairCounts,
  sent: string,
  many: number,
): readonly LikelyLetter[] {
  return chancesFor(counts, sent)
    .filter(({ letter }) => letter !== sent)
    .sort((one, other) => other.chance - one.chance)
    .slice(0, many);
}

/** One more answer for a letter. */
export function withAnswer(counts: PairCounts, sent: string, answered: string): PairCounts {
  const pair = sent + answered;
  return new Map(counts).set(pair, (counts.get(pair) ?? 0) + 1);
}

/** Two letters that the pilot has mixed up, either way. */
export interface MixedPair {
  readonly letters: string;
  /** How often one was taken for the other. */
  readonly mixed: number;
  /** How often either was sent and answered with a letter. */
  readonly of: number;
}

/** The pairs that the pilot has mixed up at least once, the most often first. */
export function mixedPairs(counts: PairCounts): readonly MixedPair[] {
  const sentOf = (letter: string): number =>
    LETTERS.reduce((sum, each) => sum + (counts.get(letter + each) ?? 0), 0);
  return LETTERS.flatMap((one) =>
    LETTERS.filter((other) => other > one).map((other) => ({
      letters: one + other,
      mixed: (counts.get(one + other) ?? 0) + (counts.get(other + one) ?? 0),
      of: sentOf(one) + sentOf(other),
    })),
  )
    .filter(({ mixed }) => mixed > 0)
    .toSorted((one, other) => other.mixed - one.mixed || one.of - other.of);
}
