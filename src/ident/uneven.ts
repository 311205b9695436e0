import { chanceFrom } from './drill/chance.ts';
import type { Mark } from './timeline.ts';

/** How uneven a hand keys. */
export interface Hand {
  /** A whole number: the same seed, the same hand. */
  readonly seed: number;
  /** One standard deviation of each mark and each gap, as a share of its length, 0 to 0.3. */
  readonly jitter?: number;
}

const USUAL_JITTER = 0.1;
const MOST_JITTER = 0.3;

/** A quiet longer than this stands between two idents, not in one, seconds. */
const BETWEEN_IDENTS_S = 1.5;

/** Dots in a dash: 3 by the book; a hand, or a worn cam, has its own. Common practice, no source. */
const DASH = { book: 3, least: 2.5, most: 3.7 } as const;

/**
 * Marks as a hand keys them: every length a little off, and dashes of its own length.
 *
 * Each ident still begins when it began, unless the one before lasts too long; marks never touch. The same
 * marks and the same seed give the same hand. What else the marks carry stays.
 */
export function unevenMarks<Keyed extends Mark>(marks: readonly Keyed[], hand: Hand): Keyed[] {
  const chance = chanceFrom(hand.seed);
  const jitter = Math.min(MOST_JITTER, Math.max(0, hand.jitter ?? USUAL_JITTER));
  const dashRatio = (DASH.least + (DASH.most - DASH.least) * chance()) / DASH.book;
  const off = (): number => Math.exp(jitter * normal(chance));
  const uneven: Keyed[] = [];
  let endS = Number.NEGATIVE_INFINITY;
  let bookEndS = Number.NEGATIVE_INFINITY;
  for (const mark of marks) {
    const gapS = mark.startS - bookEndS;
    const startS =
      gapS > BETWEEN_IDENTS_S
        ? Math.max(mark.startS, endS + BETWEEN_IDENTS_S)
        : endS + gapS * off();
    const ownS = mark.durationS * (mark.element === 'dash' ? dashRatio : 1);
    const durationS = ownS * off();
    uneven.push({ ...mark, startS, durationS });
    endS = startS + durationS;
    bookEndS = mark.startS + mark.durationS;
  }
  return uneven;
}

/** A normal number of mean 0 and deviation 1, no farther out than 2.5: nobody holds a dot for a second. */
function normal(chance: () => number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - chance()));
  const value = radius * Math.cos(2 * Math.PI * chance());
  return Math.max(-2.5, Math.min(2.5, value));
}
