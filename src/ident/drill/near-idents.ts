import { pattern } from '../morse.ts';
import { letterOf } from './letters.ts';

/** An ident that differs from another in one element of one letter. */
export interface NearIdent {
  readonly ident: string;
  readonly letterIndex: number;
  /** The letter that stands in the place of the other. */
  readonly letter: string;
}

/** All idents that differ from this one in one element: changed, left out or put in. */
export function nearIdents(ident: string): readonly NearIdent[] {
  return Array.from(ident).flatMap((letter, letterIndex) =>
    nearLetters(letter).map((near) => ({
      ident: ident.slice(0, letterIndex) + near + ident.slice(letterIndex + 1),
      letterIndex,
      letter: near,
    })),
  );
}

/** The letters that differ from this one in one element, in the order of the alphabet. */
export function nearLetters(letter: string): readonly string[] {
  const keyed = pattern(letter);
  const near = new Set<string>();
  for (let at = 0; at <= keyed.length; at += 1) {
    const before = keyed.slice(0, at);
    const here = keyed.charAt(at);
    const after = keyed.slice(at + 1);
    const flipped = here === '.' ? '-' : '.';
    const others = [`${before}.${here}${after}`, `${before}-${here}${after}`];
    if (here !== '') others.push(before + flipped + after, before + after);
    for (const other of others) {
      const found = letterOf(other);
      if (found !== null && found !== letter) near.add(found);
    }
  }
  return [...near].sort();
}
