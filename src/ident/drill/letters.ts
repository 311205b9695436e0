import { pattern } from '../morse.ts';

/** The letters of idents. Figures are left out: idents hardly ever carry one. */
export const LETTERS: readonly string[] = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ');

/**
 * The letters in the order in which they are taken up. Those that are easily taken for each other stand
 * in one group, so that the ear learns the contrast and not the letter alone.
 * *Source:* a proposal of this project; nothing was measured on people.
 */
export const LETTER_GROUPS: readonly (readonly string[])[] = [
  'ETANIM',
  'SURWDKGO',
  'HVFLBX',
  'PJQZCY',
].map((group) => Array.from(group));

/** The letters of the first groups; `groups` below 1 counts as 1. */
export function lettersOfGroups(groups: number): readonly string[] {
  return LETTER_GROUPS.slice(0, Math.max(1, groups)).flat();
}

const byPattern = new Map(LETTERS.map((letter) => [pattern(letter), letter]));

/** The letter that is keyed with these dots and dashes (`-.-`), or null when none is. */
export function letterOf(dotsAndDashes: string): string | null {
  return byPattern.get(dotsAndDashes) ?? null;
}
