import { turnDeg } from '../base/angle.ts';
import { acrossNmPerS } from './along-line.ts';
import type { AlongLine } from './along-line.ts';
import { REACTION_S, TURN_RATE_DEG_PER_S } from './tuning.ts';

/** A stretch beyond the next reading that still counts, seconds. */
const TAIL_S = 25;
/** Least distance that is worth a turn, NM, and the least angle, radians. */
const LEAST_WORTH_NM = 0.028;
const LEAST_WORTH_RAD = (0.5 * Math.PI) / 180;

/** For so long that distance would have to be flown: by the interval between readings, and a part that is fixed, s. */
const WORTH_PER_INTERVAL = 1.25;
const WORTH_BESIDE_S = 8;

/** A way that ends off the line's heading by more than this pays a part of the next change, rising over this. */
const SETTLED_WITHIN_DEG = 2.5;
const UNSETTLED_OVER_DEG = 5;
const UNSETTLED_PRICE = 0.3;
/** Not when the next reading comes so soon that no second turn fits before it; in full from twice that. */
const SHORT_S = 30;

/** One way to fly on: a heading now, perhaps another one later. Magnetic. */
export interface Candidate {
  readonly headingDeg: number;
  readonly second: { readonly atS: number; readonly headingDeg: number } | null;
}

/** Integral of the squared distance from the line over a stretch, NM^2 s. */
function squaredOver(startNm: number, speed: number, durationS: number): number {
  return (
    durationS *
    (startNm * startNm + startNm * speed * durationS + (speed * speed * durationS * durationS) / 3)
  );
}

/** How much another change is already foreseen by a way that does not end on the line's heading. */
function unsettled(motion: AlongLine, endHeadingDeg: number): number {
  const off = Math.abs(turnDeg(endHeadingDeg, motion.lineHeadingDeg));
  return UNSETTLED_PRICE * Math.min(1, Math.max(0, off - SETTLED_WITHIN_DEG) / UNSETTLED_OVER_DEG);
}

/** When a turn of this size told at 0 s has its effect, as if it were flown at once. */
function effectiveS(turn: number): number {
  return REACTION_S + Math.abs(turn) / (2 * TURN_RATE_DEG_PER_S);
}

/**
 * What a way to fly on costs: the squared distance from the line until the next reading (and a little beyond),
 * and a price for each change of heading that grows with its size. NM^2 s.
 *
 * The price is what a steady distance of half a degree (at least 0.028 NM) would cost for 1.25 intervals between
 * readings and 8 s more: nearer than that, staying is cheaper than turning. Tuned by simulation.
 */
export function planCost(
  motion: AlongLine,
  presentHeadingDeg: number,
  candidate: Candidate,
  horizonS: number,
): number {
  const endS = horizonS + TAIL_S;
  const worthNm = Math.max(LEAST_WORTH_NM, LEAST_WORTH_RAD * motion.rangeNm);
  const price = worthNm * worthNm * (WORTH_PER_INTERVAL * horizonS + WORTH_BESIDE_S);
  let cost = 0;
  let atS = 0;
  let offNm = motion.crossTrackNm;
  const fly = (headingDeg: number, untilS: number): void => {
    const speed = acrossNmPerS(motion, headingDeg);
    const stretchS = Math.max(0, Math.min(untilS, endS) - atS);
    cost += squaredOver(offNm, speed, stretchS);
    offNm += speed * stretchS;
    atS += stretchS;
  };
  const firstTurn = turnDeg(presentHeadingDeg, candidate.headingDeg);
  if (Math.abs(firstTurn) > 0.5) {
    cost += price * (1 + Math.abs(firstTurn) / 60);
    fly(presentHeadingDeg, effectiveS(firstTurn));
  }
  if (candidate.second) {
    const secondTurn = turnDeg(candidate.headingDeg, candidate.second.headingDeg);
    cost += price * (0.6 + Math.abs(secondTurn) / 60);
    fly(candidate.headingDeg, candidate.second.atS + effectiveS(secondTurn));
    fly(candidate.second.headingDeg, endS);
  } else fly(candidate.headingDeg, endS);
  const endDeg = candidate.second?.headingDeg ?? candidate.headingDeg;
  return (
    cost + price * unsettled(motion, endDeg) * Math.min(1, Math.max(0, horizonS / SHORT_S - 1))
  );
}
