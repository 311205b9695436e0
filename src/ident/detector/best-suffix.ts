import { LETTERS, LETTER_GAP_UNITS } from './letter-tree.ts';
import type { LetterTables } from './letter-tables.ts';

/** The most letters of an ident. */
export const MOST_LETTERS = 4;

/** Frames from the start of each letter to the start of the next one, for a dot of `unit` frames. */
export function letterSteps(unit: number): Int32Array {
  return Int32Array.from(LETTERS, ({ units }) => Math.round((units + LETTER_GAP_UNITS) * unit));
}

/**
 * The best evidence that 1, 2, 3 or 4 letters can give from each place on: `best[n - 1][place]`.
 *
 * A table of what is still to be had, worked out from the last letter back.
 */
export function bestSuffixes(tables: LetterTables): readonly Float64Array[] {
  const steps = letterSteps(tables.unit);
  const best: Float64Array[] = [];
  for (let n = 0; n < MOST_LETTERS; n += 1) {
    const rest = best[n - 1];
    const here = new Float64Array(tables.places).fill(-Infinity);
    for (const [letter, table] of tables.letters.entries()) {
      const step = steps[letter] ?? 0;
      for (let p = 0; p < tables.places; p += 1) {
        const later = rest === undefined ? 0 : p + step < tables.places ? (rest[p + step] ?? 0) : 0;
        const all = (table[p] ?? 0) + later;
        if (all > (here[p] ?? 0)) here[p] = all;
      }
    }
    best.push(here);
  }
  return best;
}
