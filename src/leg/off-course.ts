import { sinDeg } from '../base/angle.ts';

/** Degrees of 1 NM seen from 60 NM, by the rule that pilots use in their heads. */
const ONE_IN_SIXTY = 60;

/**
 * How far an aircraft is from the course line, NM, with the sign of the angle.
 *
 * `offDeg`: angle at the station between its radial and the course; `rangeNm`: ground distance from it.
 * The triangle itself; `oneInSixtyNm` is the rule of thumb for it.
 * *Source:* plane trigonometry; the curvature costs less than 0.02 NM within 100 NM and 12 degrees.
 */
export function offCourseNm(offDeg: number, rangeNm: number): number {
  return rangeNm * sinDeg(offDeg);
}

/**
 * The same by the 1-in-60 rule: one degree at 60 NM is one nautical mile.
 *
 * 5 % under the arc (pi/180 is 1/57.3); within 5 % of the triangle up to 20 degrees.
 * *Source:* FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, ch. 16, "Angle of intercept".
 */
export function oneInSixtyNm(offDeg: number, rangeNm: number): number {
  return (offDeg * rangeNm) / ONE_IN_SIXTY;
}

/**
 * The angle by the 1-in-60 rule, degrees: of a track error after a distance flown, or with which to close on
 * a point over the distance to go. 0 where there is no distance.
 *
 * *Source:* H. Andersen, PPL(A) theory (2025), p. 913.
 */
export function oneInSixtyDeg(offNm: number, distanceNm: number): number {
  return distanceNm > 0 ? (offNm * ONE_IN_SIXTY) / distanceNm : 0;
}

/**
 * By how much to turn to be back on the line at its end, degrees: the track error made so far and the angle with
 * which to close, by the 1-in-60 rule. Null where nothing was flown yet or nothing is left.
 *
 * Holds where the leg was begun on the line and one heading was held.
 * *Source:* as for `oneInSixtyDeg`.
 */
export function closingTurnDeg(offNm: number, flownNm: number, toGoNm: number): number | null {
  if (!(flownNm > 0) || !(toGoNm > 0)) return null;
  return oneInSixtyDeg(offNm, flownNm) + oneInSixtyDeg(offNm, toGoNm);
}
