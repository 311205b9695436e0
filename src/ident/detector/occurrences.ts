import { bestChain } from './best-chain.ts';
import type { BestChain } from './best-chain.ts';
import { LETTERS, LETTER_GAP_UNITS } from './letter-tree.ts';
import type { LetterTables } from './letter-tables.ts';

/** One place where an ident seems to be keyed, with what fits best there. */
export interface Occurrence {
  /** Place of its start in the tables. */
  readonly place: number;
  /** End of its last mark, places. */
  readonly endPlace: number;
  /** Letters as numbers from A = 0. */
  readonly letters: readonly number[];
  /** Evidence for it against no tone at all, nats, less what looking everywhere costs. */
  readonly score: number;
}

/** How usual idents of 1, 2, 3 and 4 letters are. *Source:* common practice, no source. */
const LENGTH_SHARE = [0.002, 0.02, 0.968, 0.01] as const;

/** The least quiet between the end of one ident and the start of the next: no more than a word gap. */
const REST = { units: 6, mostS: 1.5 } as const;

/** The least quiet between two idents with dots of `dotS` seconds, seconds. *Source:* ITU-R M.1677-1: 7 dots. */
export function restS(dotS: number): number {
  return Math.min(REST.mostS, REST.units * dotS);
}

/** ln of how likely one given ident of `letters` letters is before anything is heard. */
export function identLogPrior(letters: number): number {
  return Math.log(LENGTH_SHARE[letters - 1] ?? 1e-6) - letters * Math.log(LETTERS.length);
}

/** The best chain of idents of up to `mostLetters` letters. `frameS`: seconds in a frame. */
export function chainOf(
  tables: LetterTables,
  frameS: number,
  mostLetters: number = LENGTH_SHARE.length,
): BestChain {
  const costs = LENGTH_SHARE.slice(0, mostLetters).map(
    (_, n) => identLogPrior(n + 1) - Math.log(tables.places),
  );
  return bestChain(tables, costs, Math.round(restS(tables.unit * frameS) / frameS));
}

/**
 * Idents one after the other that do not run into each other, with the most evidence in all.
 *
 * In all, and not the most evident first: an ident of four letters may take in the last letters of one
 * ident and the first ones of the next, and be more evident than either of them.
 * Only those whose evidence outweighs that they could have been anywhere.
 */
export function occurrencesIn(tables: LetterTables, chain: BestChain): Occurrence[] {
  const found: Occurrence[] = [];
  for (let place = 0; place < tables.places;) {
    const here = chain.total[place] ?? 0;
    if (here <= 0) break;
    if (here === chain.total[place + 1]) {
      place += 1;
      continue;
    }
    const letters = traced(tables, chain, place);
    const { endPlace, next } = endOf(tables, chain, letters, place);
    found.push({ place, endPlace, letters, score: here - (chain.total[next] ?? 0) });
    place = next;
  }
  return found;
}

/** The letters of the ident with which the best chain from a place begins. */
function traced(
  tables: LetterTables,
  { within, total, stepsOut, costs }: BestChain,
  place: number,
): number[] {
  const worth = (n: number) => (within[n]?.[place] ?? 0) + (costs[n] ?? 0);
  const length = costs.reduce((best, _, n) => (worth(n) > worth(best) ? n : best), 0);
  const letters: number[] = [];
  let at = place;
  for (let left = length; left >= 0; left -= 1) {
    const after = within[left - 1] ?? total;
    const way = left === 0 ? stepsOut : tables.steps;
    const value = (letter: number) =>
      (tables.letters[letter]?.[at] ?? 0) + (after[at + (way[letter] ?? 0)] ?? 0);
    const letter = LETTERS.reduce((best, _, each) => (value(each) > value(best) ? each : best), 0);
    letters.push(letter);
    at += tables.steps[letter] ?? 0;
  }
  return letters;
}

/** Where an ident that starts at a place ends, and where the next one may begin. */
function endOf(
  { steps, unit }: LetterTables,
  { stepsOut }: BestChain,
  letters: readonly number[],
  place: number,
): { readonly endPlace: number; readonly next: number } {
  const last = letters.at(-1) ?? 0;
  const all = letters.reduce((sum, letter) => sum + (steps[letter] ?? 0), place);
  const next = all - (steps[last] ?? 0) + (stepsOut[last] ?? 0);
  return { endPlace: all - Math.round(LETTER_GAP_UNITS * unit), next };
}
