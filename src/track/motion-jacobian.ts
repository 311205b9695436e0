import { RAD_PER_DEG } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import type { AirPath } from './air-path.ts';
import { BEARING, LN_RANGE, STATE_SIZE } from './belief.ts';
import type { StateMean } from './belief.ts';
import { diagonal } from './matrix.ts';
import type { Matrix } from './matrix.ts';
import { biasKept, turnedPath } from './motion.ts';
import { placeOf } from './place.ts';

/** Derivatives of (ln range, bearing) by (east, north) at a place, NM. */
export interface PolarByPlane {
  readonly rangeByEast: number;
  readonly rangeByNorth: number;
  readonly bearingByEast: number;
  readonly bearingByNorth: number;
}

/** The plane itself in their stead: for a derivative that stays in the plane. */
export const IN_PLANE: PolarByPlane = {
  rangeByEast: 1,
  rangeByNorth: 0,
  bearingByEast: 0,
  bearingByNorth: 1,
};

/** At the place of a state. Infinite overhead; the range is kept off zero. */
export function polarByPlane(mean: StateMean): PolarByPlane {
  const { eastNm, northNm } = placeOf(mean);
  const square = eastNm * eastNm + northNm * northNm;
  return {
    rangeByEast: eastNm / square,
    rangeByNorth: northNm / square,
    bearingByEast: northNm / square,
    bearingByNorth: -eastNm / square,
  };
}

/**
 * Derivative of the state after a path (`after`, from `moved`) by the state before it.
 *
 * The chain of: polar to plane at the old place, the motion (linear in the plane), plane to polar at the
 * new place. With `IN_PLANE` the last is left out.
 */
export function motionJacobian(
  before: StateMean,
  after: StateMean,
  path: AirPath,
  trueAirspeedKt: number,
  polar: PolarByPlane = polarByPlane(after),
): Matrix {
  const { eastNm, northNm } = placeOf(before);
  const air = turnedPath(path, before.headingErrorDeg);
  const perS = 1 / S_PER_H;
  const hours = path.durationS * perS;
  const speed = (trueAirspeedKt + before.airspeedErrorKt) * perS;
  const byHeading = speed * RAD_PER_DEG;
  const eastBy = [eastNm, northNm, hours, 0, 0, air.eastS * perS, byHeading * air.northS];
  const northBy = [northNm, -eastNm, 0, hours, 0, air.northS * perS, -byHeading * air.eastS];
  const jacobian = [...diagonal([0, 0, 1, 1, biasKept(path.durationS), 1, 1])];
  for (let column = 0; column < STATE_SIZE; column += 1) {
    const east = eastBy[column] ?? 0;
    const north = northBy[column] ?? 0;
    jacobian[LN_RANGE * STATE_SIZE + column] =
      polar.rangeByEast * east + polar.rangeByNorth * north;
    jacobian[BEARING * STATE_SIZE + column] =
      polar.bearingByEast * east + polar.bearingByNorth * north;
  }
  return jacobian;
}
