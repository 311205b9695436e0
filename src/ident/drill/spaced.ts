import { identTimeline, type Mark } from '../timeline.ts';

/** How a practice ident is keyed: letters at one speed, gaps between letters stretched to another. */
export interface SpacedKeying {
  /** Speed within a letter, words a minute. */
  readonly letterWpm: number;
  /** Speed over all, words a minute; not above `letterWpm`. Both the same: as on the air. */
  readonly wpm: number;
}

/** Dots of quiet between letters and words in PARIS and its word gap: 4 letter gaps of 3, one of 7. */
const GAP_UNITS = 19;
const LETTER_GAP_UNITS = 3;

/**
 * An ident with the gaps between its letters stretched (Farnsworth spacing). Seconds, the first mark at 0.
 *
 * With `wpm` at or above `letterWpm`: keyed evenly at `letterWpm`.
 * *Source:* J. Bloom, "A standard for Morse timing using the Farnsworth technique", QEX, April 1990: the
 * quiet of a word lasts (60 c - 37.2 s) / (s c) seconds, shared out as 3/19 a letter gap (from memory).
 */
export function spacedTimeline(ident: string, { letterWpm, wpm }: SpacedKeying): readonly Mark[] {
  const marks = identTimeline(ident, { wpm: letterWpm });
  if (wpm >= letterWpm) return marks;
  const quietS = (60 * letterWpm - 37.2 * wpm) / (wpm * letterWpm);
  const gapS = (LETTER_GAP_UNITS * quietS) / GAP_UNITS;
  const usualGapS = (LETTER_GAP_UNITS * 1.2) / letterWpm;
  return marks.map((mark) => ({
    ...mark,
    startS: mark.startS + mark.letterIndex * (gapS - usualGapS),
  }));
}
