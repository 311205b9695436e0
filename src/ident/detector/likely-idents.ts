import type { BestChain } from './best-chain.ts';
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
 * given up when even the best rest could not bring it within 14 nats of the best. An ident that would
 * run into the next one counts without what it takes from that. `before`: the occurrence before it.
 */
export function likelyIdents(
  { tables, chain }: { readonly tables: LetterTables; readonly chain: BestChain },
  occurrence: Occurrence,
  before: Occurrence | null,
): Map<IdentKey, number> {
  const { within, total, stepsOut, rest } = chain;
  const found = new Map<IdentKey, number>();
  const near = Math.round(NEAR_UNITS * tables.unit);
  const earliest = before === null ? 0 : before.endPlace + rest - Math.round(tables.unit);
  const first = Math.max(0, earliest, occurrence.place - near);
  const last = Math.min(tables.places - 1, occurrence.place + near);
  const onward = total[occurrence.endPlace + rest] ?? 0;
  const best = occurrence.score + Math.log(tables.places);
  let visits = 0;
  const descend = (place: number, left: number, key: IdentKey, sum: number) => {
    const after = within[left - 2] ?? total;
    const way = left === 1 ? stepsOut : tables.steps;
    for (let letter = 0; letter < LETTERS.length; letter += 1) {
      visits += 1;
      const here = sum + (tables.letters[letter]?.[place] ?? 0);
      const next = place + (way[letter] ?? 0);
      const all = here + (after[next] ?? 0) - onward;
      if (all < best - WITHIN) continue;
      const longer = key * 27 + letter + 1;
      if (left === 1) found.set(longer, plus(found.get(longer) ?? -Infinity, all));
      else if (visits < MOST_VISITS) descend(next, left - 1, longer, here);
    }
  };
  for (let n = 1; n <= within.length; n += 1) {
    const prior = identLogPrior(n);
    for (let p = first; p <= last; p += 1) {
      if ((within[n - 1]?.[p] ?? 0) + prior - onward < best - WITHIN) continue;
      descend(p, n, 0, prior);
    }
  }
  return found;
}
