import { turnDeg, wrap360 } from '../base/angle.ts';
import { airPath } from './air-path.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import { withTurnOntoLine } from './onto-line.ts';
import type { Reading } from './reading.ts';
import { tellPlan } from './tell-plan.ts';
import { changesOf } from './told-path.ts';

/** The OBS turned by less than this, degrees, is a test of the needle, and not another course. */
const SAME_COURSE_DEG = 5;

/**
 * What a leg to the station on the course set would have told after the last reading, on a leg from it whose station
 * is still ahead (the flag shows TO); else null.
 *
 * The readings of the way to the station may be given to the leg from it as well. They were flown by the headings of
 * the leg before, which this one has not told.
 */
export function inboundPlan(estimate: Estimate): ToldPlan | null {
  const { scene, flag, isPlaced, readings } = estimate;
  if (scene.isTo || scene.arc || flag !== 'to' || !isPlaced) return null;
  const courseDeg = courseInboundDeg(readings);
  const courseDegTrue = wrap360(scene.courseDegTrue + turnDeg(scene.courseDeg, courseDeg));
  const inbound = {
    ...estimate,
    scene: { ...scene, isTo: true, courseDeg, courseDegTrue, endGroundNm: 0 },
  };
  return withTurnOntoLine(tellPlan(inbound), inbound);
}

/** The course on the OBS since it was last turned to another one. */
function courseInboundDeg(readings: readonly Reading[]): number {
  const last = readings.at(-1)?.courseSetDeg ?? 0;
  const isOther = ({ courseSetDeg }: Reading): boolean =>
    Math.abs(turnDeg(courseSetDeg, last)) >= SAME_COURSE_DEG;
  return readings[readings.findLastIndex(isOther) + 1]?.courseSetDeg ?? last;
}

/** Which of what this leg and the leg before it have told the heading read shows to have been flown. */
export function planFlown(
  { headingDeg, plan, inbound }: Estimate,
  readDeg: number | null,
  durationS: number,
): ToldPlan | null {
  if (!inbound || headingDeg === null || readDeg === null) return plan;
  const offDeg = (told: ToldPlan | null): number => {
    const { endHeadingDeg } = airPath(headingDeg, changesOf(told), durationS);
    return Math.abs(turnDeg(endHeadingDeg, readDeg));
  };
  return offDeg(inbound) <= offDeg(plan) ? inbound : plan;
}
