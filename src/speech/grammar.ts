import type { Command, HeardReading, HearingScale } from './heard.ts';
import type { Token } from './tokens.ts';

/** One reading or command that a phrase of the sentence stands for. */
export interface Piece {
  /** The phrase in the words of the vocabulary. */
  readonly text: string;
  readonly reading?: HeardReading;
  readonly command?: Command;
}

/** What a production makes of the words at its place. */
export type Parse =
  /** Not its phrase: another production may have it. */
  | { readonly kind: 'no' }
  | { readonly kind: 'took'; readonly piece: Piece; readonly next: number }
  /** Its phrase, but not one that can be understood: the sentence is refused. */
  | { readonly kind: 'refused'; readonly reason: string };

/** One phrase of the vocabulary. */
export type Production = (tokens: readonly Token[], at: number, scale: HearingScale) => Parse;

/** The phrase is not this production's. */
export const NO: Parse = { kind: 'no' };

/** The phrase was understood. */
export function took(piece: Piece, next: number): Parse {
  return { kind: 'took', piece, next };
}

/** The phrase was recognised, but it cannot be understood. */
export function refused(reason: string): Parse {
  return { kind: 'refused', reason };
}

/** Words between the name of an instrument and what it shows. */
export const SHOWS: ReadonlySet<string> = new Set(['is', 'shows', 'reads', 'set', 'on', 'at']);
