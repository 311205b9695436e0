import { turnDeg } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import { acrossNmPerS, alongLine, lineSpeedKt } from './along-line.ts';
import type { AlongLine } from './along-line.ts';
import { cadenceS } from './cadence.ts';
import { holdLine, isNearStation } from './choose-plan.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import { isRangeKnown } from './how-far.ts';
import { bearingSdDeg } from './place.ts';
import { REACTION_S, TURN_RATE_DEG_PER_S } from './tuning.ts';

/** A smaller angle to the line closes so slowly that the next reading will do. One and a half steps of heading. */
const LEAST_CUT_DEG = 7.5;
/** A bearing less certain than this (a needle on its stop) gives no time. Common practice, no source. */
const GREATEST_BEARING_SD_DEG = 4;
/** Beyond this a time says nothing: the place is started afresh then. */
const LONGEST_S = 900;
/** Times are told in steps of this. */
const STEP_S = 5;

/** Whether a time to the line can be given at all. */
function isTimeKnown({ belief, scene, hasPassed }: Estimate): boolean {
  if (hasPassed || scene.arc || !isRangeKnown(belief)) return false;
  return bearingSdDeg(belief) <= GREATEST_BEARING_SD_DEG;
}

/** From the moment a turn is told until it has its effect, as if it were flown at once, s. */
function leadS(turn: number): number {
  return REACTION_S + Math.abs(turn) / (2 * TURN_RATE_DEG_PER_S);
}

/**
 * When the turn onto the line is to be told so that it ends on the line, seconds from now; null where the heading
 * does not lead there.
 */
function timeToTurnS(
  motion: AlongLine,
  headings: { readonly presentDeg: number; readonly cutDeg: number; readonly lineDeg: number },
): number | null {
  const { presentDeg, cutDeg, lineDeg } = headings;
  const firstS = leadS(turnDeg(presentDeg, cutDeg)) * (presentDeg === cutDeg ? 0 : 1);
  const offNm = motion.crossTrackNm + acrossNmPerS(motion, presentDeg) * firstS;
  const speed = acrossNmPerS(motion, cutDeg);
  if (offNm * speed >= 0) return null;
  return firstS - offNm / speed - leadS(turnDeg(cutDeg, lineDeg));
}

/**
 * The plan with the turn onto the line in it, where an intercept heading was to be held beyond the next reading:
 * so the pilot knows when to turn, and to what, if no reading comes.
 *
 * The turn never comes before the next reading is due: until then the cost has chosen. Unchanged where the range
 * or the bearing is not known well enough for a time, and where the line would be reached beyond the station.
 */
export function withTurnOntoLine(plan: ToldPlan, estimate: Estimate): ToldPlan {
  const { belief, scene, headingDeg, readings } = estimate;
  if (plan.holdS !== null || !isTimeKnown(estimate)) return plan;
  const motion = alongLine(belief.mean, scene);
  const cut = turnDeg(motion.lineHeadingDeg, plan.headingDeg);
  if (Math.abs(cut) < LEAST_CUT_DEG || isNearStation(motion, scene)) return plan;
  const lineDeg = holdLine(motion, plan.headingDeg).headingDeg;
  const presentDeg = headingDeg ?? plan.headingDeg;
  const cutDeg = plan.headingDeg;
  const atS = timeToTurnS(motion, { presentDeg, cutDeg, lineDeg });
  const toStationS = (motion.rangeNm * S_PER_H) / lineSpeedKt(motion);
  if (atS === null || atS > (scene.isTo ? Math.min(LONGEST_S, toStationS) : LONGEST_S)) return plan;
  const holdS = STEP_S * Math.round(Math.max(atS, cadenceS(readings)) / STEP_S);
  return { headingDeg: cutDeg, holdS, thenHeadingDeg: lineDeg };
}
