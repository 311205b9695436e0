import { RAD_PER_DEG, turnDeg } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import { acrossNmPerS, lineSpeedKt } from './along-line.ts';
import type { AlongLine } from './along-line.ts';
import { REACTION_S, TURN_RATE_DEG_PER_S } from './tuning.ts';

/** Least distance that is worth a turn, NM, and the least angle, radians. */
const LEAST_WORTH_NM = 0.028;
const LEAST_WORTH_RAD = 0.5 * RAD_PER_DEG;
/** For so many intervals between readings that distance would have to be flown; none counts for more than this, s. */
const WORTH_INTERVALS = 1.6;
const WORTH_AT_MOST_S = 75;

/** How much the next reading moves what is believed about the needle: one standard deviation, radians. */
const REVEALED_RAD = 0.7 * RAD_PER_DEG;
/** A normal distribution in three points, in standard deviations, with their weights (Gauss-Hermite). */
const THREE_POINTS = [
  [-Math.sqrt(3), 1 / 6],
  [0, 2 / 3],
  [Math.sqrt(3), 1 / 6],
] as const;
/** A distance lasts for so long after the heading has been changed for it, s. */
const CHANGED_AFTER_S = 30;
/** Inbound a distance becomes a greater angle on the way; not counted for more than this many times. */
const GREATEST_GROWTH = 4;
const LEAST_LATER_NM = 0.5;

/** What the time after the next reading is reckoned with. */
interface ToCome {
  readonly horizonS: number;
  readonly price: number;
  readonly revealedNm: number;
  readonly growth: number;
}

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

/** When a turn of this size told at 0 s has its effect, as if it were flown at once. */
function effectiveS(turn: number): number {
  return REACTION_S + Math.abs(turn) / (2 * TURN_RATE_DEG_PER_S);
}

/** How many times as much a distance weighs at the next reading, where the needle shows it larger or smaller. */
function growth(motion: AlongLine, horizonS: number): number {
  const flownNm = (lineSpeedKt(motion) * horizonS) / S_PER_H;
  const laterNm = motion.rangeNm + Math.sign(motion.pastStationNm) * flownNm;
  return Math.min(GREATEST_GROWTH, (motion.rangeNm / Math.max(laterNm, LEAST_LATER_NM)) ** 2);
}

/**
 * What is still to come at the next reading, NM^2 s, with `movesNm` made good across the line until a turn takes
 * effect: the heading stays for another interval, or it is changed for the price, whichever is cheaper; the mean
 * over what the reading may show.
 */
function costToCome(offNm: number, speed: number, movesNm: number, toCome: ToCome): number {
  let cost = 0;
  for (const [sds, weight] of THREE_POINTS) {
    const shownNm = offNm + sds * toCome.revealedNm;
    const stay = squaredOver(shownNm, speed, toCome.horizonS);
    const change = CHANGED_AFTER_S * Math.max(shownNm ** 2, (shownNm + movesNm) ** 2);
    cost += weight * Math.min(toCome.growth * stay, toCome.price + toCome.growth * change);
  }
  return cost;
}

/**
 * What a way to fly on costs: the squared distance from the line until the next reading, what then is still to
 * come, and a price for each change of heading that grows with its size. NM^2 s.
 *
 * The price is what a steady distance of half a degree (at least 0.028 NM) would cost for 1.6 intervals between
 * readings (counted as 75 s at most): nearer than that, staying is cheaper than turning. What is to come is the
 * cheaper of staying and turning again, so a heading that makes another turn unlikely is worth something. Tuned by
 * simulation.
 */
export function planCost(
  motion: AlongLine,
  presentHeadingDeg: number,
  candidate: Candidate,
  horizonS: number,
): number {
  const worthNm = Math.max(LEAST_WORTH_NM, LEAST_WORTH_RAD * motion.rangeNm);
  const price = worthNm * worthNm * WORTH_INTERVALS * Math.min(WORTH_AT_MOST_S, horizonS);
  let cost = 0;
  let atS = 0;
  let offNm = motion.crossTrackNm;
  const fly = (headingDeg: number, untilS: number): number => {
    const speed = acrossNmPerS(motion, headingDeg);
    const stretchS = Math.max(0, Math.min(untilS, horizonS) - atS);
    cost += squaredOver(offNm, speed, stretchS);
    offNm += speed * stretchS;
    atS += stretchS;
    return speed;
  };
  const firstTurn = turnDeg(presentHeadingDeg, candidate.headingDeg);
  if (Math.abs(firstTurn) > 0.5) {
    cost += price * (1 + Math.abs(firstTurn) / 60);
    fly(presentHeadingDeg, effectiveS(firstTurn));
  }
  if (candidate.second) {
    const secondTurn = turnDeg(candidate.headingDeg, candidate.second.headingDeg);
    cost += price * (1 + Math.abs(secondTurn) / 60);
    fly(candidate.headingDeg, candidate.second.atS + effectiveS(secondTurn));
  }
  const endDeg = candidate.second?.headingDeg ?? candidate.headingDeg;
  const endSpeed = fly(endDeg, horizonS);
  const movesNm = endSpeed * effectiveS(turnDeg(endDeg, motion.lineHeadingDeg));
  const revealedNm = REVEALED_RAD * motion.rangeNm;
  const toCome = { horizonS, price, revealedNm, growth: growth(motion, horizonS) };
  return cost + costToCome(offNm, endSpeed, movesNm, toCome);
}
