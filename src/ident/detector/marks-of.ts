import { LETTERS, LETTER_GAP_UNITS } from './letter-tree.ts';

/** One mark of an ident, in dots from the ident's start. */
export interface MarkAt {
  readonly fromUnits: number;
  readonly toUnits: number;
}

/** Where the marks of an ident lie, in dots from its start. */
export function marksOfPatterns(patterns: readonly string[]): MarkAt[] {
  const marks: MarkAt[] = [];
  let at = 0;
  for (const pattern of patterns) {
    for (const element of pattern) {
      const units = element === '.' ? 1 : 3;
      marks.push({ fromUnits: at, toUnits: at + units });
      at += units + 1;
    }
    at += LETTER_GAP_UNITS - 1;
  }
  return marks;
}

/** The patterns of letters given as numbers from A = 0. */
export function patternsOf(letters: readonly number[]): string[] {
  return letters.map((each) => LETTERS[each]?.pattern ?? '');
}
