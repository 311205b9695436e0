import { LETTERS, LETTER_GAP_UNITS } from './letter-tree.ts';
import type { LetterTables } from './letter-tables.ts';
import type { Occurrence } from './occurrences.ts';

/** Where one ident fits best near an occurrence. */
export interface Placement {
  /** Places in the tables. */
  readonly place: number;
  readonly evidence: number;
  /** Its length to the end of the last mark, dots. */
  readonly units: number;
}

/** How far it may lie from what fitted best there, dots. */
const NEAR_UNITS = 9;

/** The best place of an ident (letters from A = 0) near an occurrence, and its evidence there, nats. */
export function placed(
  tables: LetterTables,
  letters: readonly number[],
  occurrence: Occurrence,
): Placement {
  const { unit } = tables;
  const starts: number[] = [];
  let units = 0;
  for (const letter of letters) {
    starts.push(Math.round(units * unit));
    units += (LETTERS[letter]?.units ?? 0) + LETTER_GAP_UNITS;
  }
  const near = Math.round(NEAR_UNITS * unit);
  let best: Placement = {
    place: occurrence.place,
    evidence: -Infinity,
    units: units - LETTER_GAP_UNITS,
  };
  const last = Math.min(tables.places - 1, occurrence.place + near);
  for (let place = Math.max(0, occurrence.place - near); place <= last; place += 1) {
    const evidence = letters.reduce(
      (sum, letter, k) => sum + (tables.letters[letter]?.[place + (starts[k] ?? 0)] ?? 0),
      0,
    );
    if (evidence > best.evidence) best = { ...best, place, evidence };
  }
  return best;
}
