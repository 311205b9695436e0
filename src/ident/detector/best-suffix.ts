import type { LetterTables } from './letter-tables.ts';

/** The most letters of an ident. */
const MOST_LETTERS = 4;

/**
 * The best evidence that 1, 2 ... `most` letters can give from each place on: `best[n - 1][place]`.
 *
 * A table of what is still to be had, worked out from the last letter back.
 */
export function bestSuffixes(tables: LetterTables, most: number = MOST_LETTERS): Float64Array[] {
  const best: Float64Array[] = [];
  for (let n = 0; n < most; n += 1) {
    const here = new Float64Array(tables.places).fill(-Infinity);
    for (const [letter, table] of tables.letters.entries()) {
      improve(here, table, best[n - 1], tables.steps[letter] ?? 0);
    }
    best.push(here);
  }
  return best;
}

/** Takes in one letter as the next one: `here` becomes the better of the two at each place. */
function improve(
  here: Float64Array,
  table: Float64Array,
  rest: Float64Array | undefined,
  step: number,
): void {
  const places = here.length;
  const within = rest === undefined ? 0 : Math.max(0, places - step);
  for (let p = 0; p < within; p += 1) {
    const all = (table[p] ?? 0) + (rest?.[p + step] ?? 0);
    if (all > (here[p] ?? 0)) here[p] = all;
  }
  // After the end of the recording nothing speaks for or against a letter.
  for (let p = within; p < places; p += 1) {
    const all = table[p] ?? 0;
    if (all > (here[p] ?? 0)) here[p] = all;
  }
}
