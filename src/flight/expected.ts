import { turnDeg } from '../base/angle.ts';
import { isAboutArc } from '../track/arc-course.ts';
import type { Estimate } from '../track/estimate.ts';
import { foresee } from '../track/foresee.ts';
import type { Foresight } from '../track/foresight.ts';
import type { FlightState } from './state.ts';

/**
 * What the panel should show at a moment, if the standing answer is being flown; the page fills it in
 * before the pilot reads. Null before anything tells where the aircraft is, and after the flight is over.
 */
export function expectedAt(state: FlightState, atMs: number): Foresight | null {
  const { estimate, finishedAtMs } = state;
  if (estimate?.isPlaced !== true || finishedAtMs !== null) return null;
  return foresee(onLegCourse(estimate), estimate.leg, atMs);
}

/** Whether the OBS follows the radials: about an arc, and while the station is held abeam to find the range. */
export function followsRadials(estimate: Estimate): boolean {
  return estimate.rangeCheck.kind === 'flying' || isAboutArc(estimate);
}

/** Foresight leaves the OBS as it was last read; here the pilot has been told to set it back, mostly. */
function onLegCourse(estimate: Estimate): Estimate {
  if (followsRadials(estimate)) return estimate;
  return withCourseSet(estimate, estimate.leg.leg.courseDeg);
}

/**
 * The estimate with another course on the OBS when it was last read, for foresight; turned by more than 90 degrees
 * the flag is the other one too, or it would seem to contradict the place.
 */
export function withCourseSet(estimate: Estimate, courseSetDeg: number): Estimate {
  const last = estimate.readings.at(-1);
  if (last === undefined || last.courseSetDeg === courseSetDeg) return estimate;
  const isTurned = Math.abs(turnDeg(last.courseSetDeg, courseSetDeg)) > 90;
  const flag = isTurned ? OTHER_FLAG[last.flag] : last.flag;
  const readings = [...estimate.readings.slice(0, -1), { ...last, courseSetDeg, flag }];
  return { ...estimate, readings };
}

const OTHER_FLAG = { to: 'from', from: 'to', off: 'off' } as const;
