import { turnDeg } from '../base/angle.ts';
import type { Belief } from './belief.ts';
import { intervalTo } from './carry-on.ts';
import type { Interval } from './carry-on.ts';
import type { Estimate } from './estimate-record.ts';
import { isMisfit, judge } from './judge.ts';
import { likelihoodOf } from './likelihood.ts';
import type { Reading } from './reading.ts';
import { resetAwaited } from './reset-indicator.ts';
import type { Scene } from './scene.ts';
import { isExplained } from './told-path.ts';

/** Before this many readings the place is too uncertain to tell a heading that was misheard. Tuned by simulation. */
const SETTLED_AFTER = 2;
/** Logarithm of a likelihood ratio: so much better must the heading told explain a reading. Tuned likewise. */
const BETTER_BY = 3.5;
/** A second heading this near to the one in doubt was meant. Common practice, no source. */
const SAME_HEADING_DEG = 15;

/** How a reading was come to, and the heading in it that is taken for a slip (magnetic); null: none is. */
export interface BelievedInterval {
  readonly interval: Interval;
  readonly headingDoubtDeg: number | null;
}

/**
 * The interval from what an estimate last knew to a new reading, with a misheard heading left out of it.
 *
 * A heading that no turn told explains is either flown or misheard. Where needle and distance fit the heading told
 * far better than the one read, the one told is believed and the other is asked for again; read once more, it is taken.
 */
export function believedInterval(before: Estimate, reading: Reading): BelievedInterval {
  const asRead = intervalTo(before, reading);
  const { headingDeg, ...rest } = reading;
  if (headingDeg === undefined || !isPlaceSettled(before)) {
    return { interval: asRead, headingDoubtDeg: null };
  }
  const doubted = before.headingDoubtDeg;
  const isMeant = doubted !== null && Math.abs(turnDeg(doubted, headingDeg)) <= SAME_HEADING_DEG;
  // An indicator set again by the compass jumps, and nothing has been turned.
  const isReset = resetAwaited(before) > 0;
  const held = intervalTo(before, rest);
  if (
    isMeant ||
    isReset ||
    held.durationS === 0 ||
    isExplained(before, headingDeg, held.durationS)
  ) {
    return { interval: asRead, headingDoubtDeg: null };
  }
  const withRead = asRead.carryOn(before.belief);
  const withHeld = held.carryOn(before.belief);
  const isBetter =
    !isMisfit(judge(withHeld, before.scene, reading)) &&
    lnLikely(withHeld, before.scene, reading) >
      lnLikely(withRead, before.scene, reading) + BETTER_BY;
  return isBetter
    ? { interval: held, headingDoubtDeg: headingDeg }
    : { interval: asRead, headingDoubtDeg: null };
}

/** Over the station nothing tells one heading from another; before a leg from it, nobody knows what was told. */
function isPlaceSettled({ takenIn, isPlaced, overStation, inbound }: Estimate): boolean {
  return takenIn >= SETTLED_AFTER && isPlaced && !overStation && !inbound;
}

/** Natural logarithm of how likely needle and distance are together. */
function lnLikely(belief: Belief, scene: Scene, reading: Reading): number {
  const { lnNeedle, lnDme } = likelihoodOf(belief, scene, reading);
  return lnNeedle + lnDme;
}
