import { plus } from './ident-loop.ts';
import type { Level } from './letter-tables.ts';
import { markEvidence } from './mark-sums.ts';

/** The tone is looked at in pieces of this length, seconds. */
const PIECE_S = 0.25;

/** How likely it goes on as it was from one piece to the next. */
const STAY = 0.97;

/**
 * The evidence for a tone that is held, or switched now and then, but not keyed: nats against no tone.
 *
 * A line of the propeller or a whistle fills every mark of every ident; an ident is only believed
 * beyond this.
 * *Source:* forward recursion of a two-state hidden Markov model (Rabiner 1989, section III A; from memory).
 */
export function heldEvidence(levels: readonly Level[], frameS: number): number {
  const count = levels[0]?.sums.count ?? 0;
  const length = Math.round(PIECE_S / frameS);
  const stay = Math.log(STAY);
  const change = Math.log(1 - STAY);
  let off = Math.log(0.5);
  let on = off;
  for (let from = 0; from < count; from += length) {
    let piece = -Infinity;
    for (const { sums } of levels) {
      piece = plus(piece, markEvidence(sums, from, from + length) - Math.log(levels.length));
    }
    const stillOff = plus(off + stay, on + change);
    on = plus(on + stay, off + change) + piece;
    off = stillOff;
  }
  return plus(off, on);
}
