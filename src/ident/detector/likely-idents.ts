import { plus } from './ident-loop.ts';
import type { LetterTables } from './letter-tables.ts';
import { LETTERS } from './letter-tree.ts';
import { identLogPrior } from './occurrences.ts';
import type { Occurrence } from './occurrences.ts';

/** An ident as one number: its letters as digits 1 to 26 in base 27. */
export type IdentKey = number;

/** The letters of a key, from A = 0. */
export function lettersOfKey(key: IdentKey): number[] {
  const letters: number[] = [];
  for (let rest = key; rest > 0; rest = Math.floor(rest / 27)) letters.unshift((rest % 27) - 1);
  return letters;
}

/** The key of letters from A = 0. */
export function keyOfLetters(letters: readonly number[]): IdentKey {
  return letters.reduce((key, letter) => key * 27 + letter + 1, 0);
}

/** Idents that fit less well than the best by more than this are left out, nats. */
const WITHIN = 14;

/** How far an ident's start may lie from that of the best one, dots. */
const NEAR_UNITS = 9;

const MOST_VISITS = 40_000;

/**
 * All idents that fit one occurrence nearly as well as the best one, with their evidence, nats.
 *
 * Every ident of 1 to 4 letters and every start near the occurrence is looked at, but a beginning is
 * given up when even the best rest could not bring it within 14 nats of the best.
 */
export function likelyIdents(
  tables: LetterTables,
  suffixes: readonly Float64Array[],
  occurrence: Occurrence,
): Map<IdentKey, number> {
  const found = new Map<IdentKey, number>();
  const near = Math.round(NEAR_UNITS * tables.unit);
  const first = Math.max(0, occurrence.place - near);
  const last = Math.min(tables.places - 1, occurrence.place + near);
  let best = -Infinity;
  for (let n = 1; n <= suffixes.length; n += 1) {
    for (let p = first; p <= last; p += 1) {
      best = Math.max(best, (suffixes[n - 1]?.[p] ?? 0) + identLogPrior(n));
    }
  }
  let visits = 0;
  const descend = (place: number, left: number, key: IdentKey, sum: number) => {
    for (let letter = 0; letter < LETTERS.length; letter += 1) {
      visits += 1;
      const here = sum + (tables.letters[letter]?.[place] ?? 0);
      const next = place + (tables.steps[letter] ?? 0);
      const rest = left === 1 ? 0 : (suffixes[left - 2]?.[next] ?? 0);
      if (here + rest < best - WITHIN) continue;
      const longer = key * 27 + letter + 1;
      if (left === 1) found.set(longer, plus(found.get(longer) ?? -Infinity, here));
      else if (visits < MOST_VISITS) descend(next, left - 1, longer, here);
    }
  };
  for (let n = 1; n <= suffixes.length; n += 1) {
    const prior = identLogPrior(n);
    for (let p = first; p <= last; p += 1) {
      if ((suffixes[n - 1]?.[p] ?? 0) + prior < best - WITHIN) continue;
      descend(p, n, 0, prior);
    }
  }
  return found;
}
