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

/** The least quiet between the end of one ident and the start of the next, seconds. */
export const REST_S = 1.5;

/** So many tops are looked at; those that run into a better one are left out. */
const MOST_TRIES = 24;

/** ln of how likely one given ident of `letters` letters is before anything is heard. */
export function identLogPrior(letters: number): number {
  return Math.log(LENGTH_SHARE[letters - 1] ?? 1e-6) - letters * Math.log(LETTERS.length);
}

/**
 * Idents one after the other, the most evident first, that do not run into each other.
 *
 * `frameS`: seconds in a frame. Only those whose evidence outweighs that they could have been anywhere.
 */
export function occurrencesIn(
  tables: LetterTables,
  suffixes: readonly Float64Array[],
  frameS: number,
): Occurrence[] {
  const total = bestOfAnyLength(suffixes, tables.places);
  const rest = Math.round(REST_S / frameS);
  const near = Math.round(tables.unit);
  const found: Occurrence[] = [];
  const taken = new Uint8Array(tables.places);
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const place = bestFree(total, taken);
    if (place < 0) break;
    const one = traced(tables, suffixes, place, total[place] ?? 0);
    const isFree = found.every(
      (other) => one.endPlace + rest <= other.place || other.endPlace + rest <= one.place,
    );
    if (isFree) found.push(one);
    const from = isFree ? one.place - rest : one.place - near;
    taken.fill(1, Math.max(0, from), isFree ? one.endPlace + rest : one.place + near);
  }
  return found.sort((a, b) => a.place - b.place);
}

/** The best evidence of any ident from each place, less what its prior and its place cost. */
function bestOfAnyLength(suffixes: readonly Float64Array[], places: number): Float64Array {
  const total = new Float64Array(places).fill(-Infinity);
  for (const [n, table] of suffixes.entries()) {
    const prior = identLogPrior(n + 1) - Math.log(places);
    for (let p = 0; p < places; p += 1) {
      const here = (table[p] ?? 0) + prior;
      if (here > (total[p] ?? 0)) total[p] = here;
    }
  }
  return total;
}

function bestFree(total: Float64Array, taken: Uint8Array): number {
  let best = -1;
  let most = 0;
  for (let p = 0; p < total.length; p += 1) {
    if (taken[p] === 0 && (total[p] ?? 0) > most) {
      most = total[p] ?? 0;
      best = p;
    }
  }
  return best;
}

/** The letters of the best ident that starts at a place. */
function traced(
  tables: LetterTables,
  suffixes: readonly Float64Array[],
  place: number,
  score: number,
): Occurrence {
  const lengths = suffixes.map((_, n) => n + 1);
  const worth = (n: number) => (suffixes[n - 1]?.[place] ?? 0) + identLogPrior(n);
  const length = lengths.reduce((best, n) => (worth(n) > worth(best) ? n : best));
  const letters: number[] = [];
  let at = place;
  for (let left = length; left > 0; left -= 1) {
    const rest = suffixes[left - 2];
    const value = (letter: number) => {
      const next = at + (tables.steps[letter] ?? 0);
      return (tables.letters[letter]?.[at] ?? 0) + (rest?.[next] ?? 0);
    };
    const letter = LETTERS.reduce((best, _, each) => (value(each) > value(best) ? each : best), 0);
    letters.push(letter);
    at += tables.steps[letter] ?? 0;
  }
  const endPlace = at - Math.round(LETTER_GAP_UNITS * tables.unit);
  return { place, endPlace, letters, score };
}
