import { pattern } from '../../src/ident/morse.ts';
import type { MarkHeard } from '../../src/ident/listening.ts';

/** A letter at the place where its marks were heard. */
export interface PlacedLetter {
  readonly letter: string;
  readonly fromS: number;
  readonly toS: number;
}

const LETTER_OF: ReadonlyMap<string, string> = new Map(
  Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ', (letter) => [pattern(letter), letter]),
);

/** Between the gap in a letter (1 dot) and that between letters (3 dots): ITU-R M.1677-1. */
const LETTER_GAP_DOTS = 2;

/** The letters that marks make up, each where it was heard; marks that make none have none. */
export function placeLetters(marks: readonly MarkHeard[], dotS: number): readonly PlacedLetter[] {
  const groups: MarkHeard[][] = [];
  let endS = Number.NEGATIVE_INFINITY;
  for (const mark of marks) {
    const group = groups.at(-1);
    if (group === undefined || mark.startS - endS > LETTER_GAP_DOTS * dotS) groups.push([mark]);
    else group.push(mark);
    endS = mark.startS + mark.durationS;
  }
  return groups.flatMap((group) => {
    const [first, last] = [group[0], group.at(-1)];
    const letter = LETTER_OF.get(
      group.map((mark) => (mark.element === 'dot' ? '.' : '-')).join(''),
    );
    if (first === undefined || last === undefined || letter === undefined) return [];
    return [{ letter, fromS: first.startS, toS: last.startS + last.durationS }];
  });
}

/** Length of a dot among the marks heard, seconds; null without marks. */
export function dotLengthS(marks: readonly MarkHeard[]): number | null {
  const dots = marks
    .map((mark) => (mark.element === 'dot' ? mark.durationS : mark.durationS / 3))
    .toSorted((one, other) => one - other);
  return dots[Math.floor(dots.length / 2)] ?? null;
}
