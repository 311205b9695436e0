import type { LetterTables } from './letter-tables.ts';
import { LETTER_GAP_UNITS } from './letter-tree.ts';

/** What idents one after the other can give from each place to the end of the recording. */
export interface BestChain {
  /** Per place: evidence of the best chain from there on; 0 beyond the last place. */
  readonly total: Float64Array;
  /** Per number of letters left of an ident, less one: the same where its next letter starts at a place. */
  readonly within: readonly Float64Array[];
  /** Per letter: places from its start to where the next ident may begin, when it was the last one. */
  readonly stepsOut: Int32Array;
  /** What it costs to begin an ident of 1, 2 ... letters, nats (below zero). */
  readonly costs: readonly number[];
  /** The least quiet after an ident, places. */
  readonly rest: number;
}

/**
 * The best way to lay idents and quiet one after the other, worked out from the end back.
 *
 * `costs`, `rest`: see the chain.
 * *Source:* Viterbi recursion of a hidden semi-Markov model (Rabiner 1989, section IV D; from memory).
 */
export function bestChain(tables: LetterTables, costs: readonly number[], rest: number): BestChain {
  const { letters, places, steps, unit } = tables;
  const gap = Math.round(LETTER_GAP_UNITS * unit);
  const stepsOut = steps.map((step) => step - gap + rest);
  const total = new Float64Array(places);
  const within = costs.map(() => new Float64Array(places));
  for (let p = places - 1; p >= 0; p -= 1) {
    let most = total[p + 1] ?? 0;
    for (const [n, cost] of costs.entries()) {
      const isLast = n === 0;
      const best = bestLetter(letters, p, within[n - 1] ?? total, isLast ? stepsOut : steps);
      within[n]?.fill(best, p, p + 1);
      most = Math.max(most, best + cost);
    }
    total[p] = most;
  }
  return { total, within, stepsOut, costs, rest };
}

/** The most that a letter at a place and what comes `way` after it give together. */
function bestLetter(
  letters: readonly Float64Array[],
  place: number,
  after: Float64Array,
  way: Int32Array,
): number {
  let best = -Infinity;
  for (let letter = 0; letter < letters.length; letter += 1) {
    const all = (letters[letter]?.[place] ?? 0) + (after[place + (way[letter] ?? 0)] ?? 0);
    if (all > best) best = all;
  }
  return best;
}
