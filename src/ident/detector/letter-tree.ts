import { elementsOf } from '../morse.ts';
import type { Element } from '../morse.ts';

/** One keyed pattern: the beginning of a letter, or a letter. */
export interface TreeNode {
  /** The node one element shorter; -1 for a single element. */
  readonly parent: number;
  readonly last: Element;
  /** From the start of its first element to the start of its last one, dots. */
  readonly lastStartUnits: number;
  /** From the start of its first element to the end of its last one, dots. */
  readonly units: number;
}

/** A letter and where it stands in the tree. */
export interface Letter {
  readonly letter: string;
  readonly node: number;
  readonly units: number;
  readonly pattern: string;
}

const ALPHABET = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ');

function patternOf(letter: string): string {
  return (elementsOf(letter)[0] ?? []).map((each) => (each === 'dot' ? '.' : '-')).join('');
}

const PATTERNS: readonly string[] = [
  ...new Set(
    ALPHABET.map(patternOf).flatMap((pattern) =>
      Array.from(pattern, (_, n) => pattern.slice(0, n + 1)),
    ),
  ),
].sort((a, b) => a.length - b.length);

/** All beginnings of letters, shorter ones first: parents stand before their children. */
export const TREE: readonly TreeNode[] = PATTERNS.map((pattern) => {
  const before = pattern.slice(0, -1);
  const parent = PATTERNS.indexOf(before);
  const last = pattern.endsWith('.') ? 'dot' : 'dash';
  const lastStartUnits = before === '' ? 0 : unitsOf(before) + 1;
  return { parent, last, lastStartUnits, units: unitsOf(pattern) };
});

/** The letters A to Z. */
export const LETTERS: readonly Letter[] = ALPHABET.map((letter) => {
  const pattern = patternOf(letter);
  return { letter, node: PATTERNS.indexOf(pattern), units: unitsOf(pattern), pattern };
});

/** Length of a pattern in dots: dots 1, dashes 3, gaps 1. *Source:* ITU-R M.1677-1, annex 1. */
function unitsOf(pattern: string): number {
  const marks = Array.from(pattern, (each): number => (each === '.' ? 1 : 3));
  return marks.reduce((sum, units) => sum + units, 0) + Math.max(0, pattern.length - 1);
}

/** The gap between letters, dots. */
export const LETTER_GAP_UNITS = 3;
