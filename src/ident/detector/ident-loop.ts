import { LETTER_GAP_UNITS, LETTERS } from './letter-tree.ts';
import type { LetterTables } from './letter-tables.ts';
import { restS } from './occurrences.ts';

/** How often an ident starts, as one in so many seconds. */
const ONCE_IN_S = 10;

/** Evidence smaller than this beside the rest is not added, nats. */
const NEGLIGIBLE = 25;

/**
 * The evidence of a whole recording for one ident, keyed any number of times or never, nats.
 *
 * The sum over all ways to lay idents and quiet one after the other, at one exact speed; 0 when nothing
 * speaks for the ident. `letters`: from A = 0. `frameS`: seconds in a frame.
 * *Source:* forward recursion of a hidden semi-Markov model (Rabiner 1989, section IV D; from memory).
 */
export function loopEvidence(
  tables: LetterTables,
  letters: readonly number[],
  frameS: number,
): number {
  const { places, unit } = tables;
  const offsets: number[] = [];
  let units = 0;
  for (const letter of letters) {
    offsets.push(Math.round(units * unit));
    units += (LETTERS[letter]?.units ?? 0) + LETTER_GAP_UNITS;
  }
  const length = Math.round((units - LETTER_GAP_UNITS) * unit + restS(unit * frameS) / frameS);
  const used = letters.flatMap((letter) => tables.letters[letter] ?? []);
  const enter = Math.log(frameS / ONCE_IN_S);
  const arrive = new Float64Array(places + 1).fill(-Infinity);
  let now = 0;
  let late = -Infinity;
  for (let p = 0; p < places; p += 1) {
    now = plus(now, arrive[p] ?? -Infinity);
    let here = enter;
    for (const [k, table] of used.entries()) here += table[p + (offsets[k] ?? 0)] ?? 0;
    if (here < -NEGLIGIBLE) continue;
    if (p + length < places) arrive[p + length] = now + here;
    else late = plus(late, now + here);
  }
  return plus(now, late);
}

/** ln(e^a + e^b); what is far smaller is left out. */
export function plus(a: number, b: number): number {
  if (a >= b) return a - b > NEGLIGIBLE ? a : a + Math.log1p(Math.exp(b - a));
  return b - a > NEGLIGIBLE ? b : b + Math.log1p(Math.exp(a - b));
}
