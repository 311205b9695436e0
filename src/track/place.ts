import { RAD_PER_DEG } from '../base/angle.ts';
import { BEARING, LN_RANGE } from './belief.ts';
import type { Belief, StateMean } from './belief.ts';
import { element } from './matrix.ts';

/** A place in the plane about the station, NM. */
export interface Place {
  readonly eastNm: number;
  readonly northNm: number;
}

/** Where the state says the aircraft is. */
export function placeOf(mean: StateMean): Place {
  const rangeNm = Math.exp(mean.lnRange);
  return {
    eastNm: rangeNm * Math.sin(mean.bearingRad),
    northNm: rangeNm * Math.cos(mean.bearingRad),
  };
}

/** Standard deviation of the logarithm of the range: a relative error. */
export function lnRangeSd(belief: Belief): number {
  return Math.sqrt(Math.max(0, element(belief.covariance, LN_RANGE, LN_RANGE)));
}

/** Standard deviation of the bearing from the station, degrees. */
export function bearingSdDeg(belief: Belief): number {
  return Math.sqrt(Math.max(0, element(belief.covariance, BEARING, BEARING))) / RAD_PER_DEG;
}
