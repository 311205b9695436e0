import type { AirPath } from './air-path.ts';
import { BEARING, LN_RANGE, STATE_SIZE } from './belief.ts';
import type { Belief, StateMean } from './belief.ts';
import { boundCorrection } from './bound.ts';
import type { Piece } from './range-pieces.ts';
import { varianceAlong } from './correct.ts';
import { diagonal, lessOuter, timesVector, transform, transformByMotion } from './matrix.ts';
import { meanOf, vectorOf } from './mean-vector.ts';
import { moved, placeAfter, polarAt } from './motion.ts';
import { IN_PLANE, motionJacobian, polarByPlane } from './motion-jacobian.ts';
import { normalBelow } from './normal.ts';
import { processNoise } from './process-noise.ts';

/** Where the flag turns, abeam the station, NM. Common practice, no source. */
const FLAG_TURNS_SD_NM = 0.05;

/** A side of a line through the station: the direction at right angles to it, of length 1. */
export interface Side {
  readonly east: number;
  readonly north: number;
}

/**
 * A narrow piece of a belief after flying a path, given that the aircraft is then on one side of the station; its
 * weight is what it was times the chance of that.
 *
 * In the plane, where the motion is linear even over the station: there range and bearing break.
 */
export function carriedToSide(
  { belief, weight }: Piece,
  path: AirPath,
  trueAirspeedKt: number,
  side: Side,
): Piece {
  const after = moved(belief.mean, path, trueAirspeedKt);
  const jacobian = motionJacobian(belief.mean, after, path, trueAirspeedKt, IN_PLANE);
  const covariance = transformByMotion(jacobian, belief.covariance);
  const noise = processNoise(after, path, trueAirspeedKt, IN_PLANE);
  for (let at = 0; at < covariance.length; at += 1) {
    covariance[at] = (covariance[at] ?? 0) + (noise[at] ?? 0);
  }
  const { eastNm, northNm } = placeAfter(belief.mean, path, trueAirspeedKt);
  const slope = [side.east, side.north, 0, 0, 0, 0, 0];
  const expected = side.east * eastNm + side.north * northNm;
  const inPlane = { mean: after, covariance };
  const noiseNm2 = FLAG_TURNS_SD_NM ** 2;
  const chance = normalBelow(expected / Math.sqrt(varianceAlong(inPlane, slope) + noiseNm2));
  const bound = boundCorrection(inPlane, slope, { side: 1, limit: 0, expected }, noiseNm2);
  const vector = [eastNm, northNm, ...vectorOf(after).slice(2)];
  if (!bound) return { belief: polarOf(vector, covariance, belief.mean), weight: weight * chance };
  const gain = timesVector(covariance, slope).map((each) => each / bound.variance);
  const there = vector.map((each, at) => each + (gain[at] ?? 0) * bound.surprise);
  const spread = lessOuter(covariance, gain, bound.variance - bound.varianceLeft);
  return { belief: polarOf(there, spread, belief.mean), weight: weight * chance };
}

/** The belief whose vector and covariance begin with the place in the plane, east and north. */
function polarOf(
  inPlane: readonly number[],
  covariance: readonly number[],
  before: StateMean,
): Belief {
  const east = inPlane[0] ?? 0;
  const north = inPlane[1] ?? 0;
  const place = { eastNm: east, northNm: north };
  const mean = { ...meanOf(inPlane), ...polarAt(place, before) };
  const polar = polarByPlane(mean);
  const jacobian = [...diagonal([0, 0, 1, 1, 1, 1, 1])];
  jacobian[LN_RANGE * STATE_SIZE] = polar.rangeByEast;
  jacobian[LN_RANGE * STATE_SIZE + 1] = polar.rangeByNorth;
  jacobian[BEARING * STATE_SIZE] = polar.bearingByEast;
  jacobian[BEARING * STATE_SIZE + 1] = polar.bearingByNorth;
  return { mean, covariance: transform(jacobian, covariance) };
}
