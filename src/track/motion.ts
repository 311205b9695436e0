import { RAD_PER_DEG } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import type { AirPath } from './air-path.ts';
import type { StateMean } from './belief.ts';
import { placeOf } from './place.ts';
import type { Place } from './place.ts';
import { GREATEST_RANGE_NM, LEAST_RANGE_NM, VOR_BIAS_TIME_S } from './tuning.ts';

const LEAST_LN_RANGE = Math.log(LEAST_RANGE_NM);
const GREATEST_LN_RANGE = Math.log(GREATEST_RANGE_NM);

/** Keeps the range within what a VOR can mean. */
export function clampLnRange(lnRange: number): number {
  return Math.min(GREATEST_LN_RANGE, Math.max(LEAST_LN_RANGE, lnRange));
}

/** Displacement through the air in NM-seconds at unit speed, turned by the error of the heading shown. */
export function turnedPath(
  path: AirPath,
  headingErrorDeg: number,
): { readonly eastS: number; readonly northS: number } {
  const cos = Math.cos(headingErrorDeg * RAD_PER_DEG);
  const sin = Math.sin(headingErrorDeg * RAD_PER_DEG);
  return {
    eastS: path.eastS * cos + path.northS * sin,
    northS: path.northS * cos - path.eastS * sin,
  };
}

/** How much of a VOR's bias is left after a time. */
export function biasKept(durationS: number): number {
  return Math.exp(-durationS / VOR_BIAS_TIME_S);
}

/** Where in the plane the aircraft is after flying a path through the air; `trueAirspeedKt` is the stated one. */
export function placeAfter(mean: StateMean, path: AirPath, trueAirspeedKt: number): Place {
  const { eastNm, northNm } = placeOf(mean);
  const air = turnedPath(path, mean.headingErrorDeg);
  const speed = (trueAirspeedKt + mean.airspeedErrorKt) / S_PER_H;
  const hours = path.durationS / S_PER_H;
  return {
    eastNm: eastNm + speed * air.eastS + mean.windEastKt * hours,
    northNm: northNm + speed * air.northS + mean.windNorthKt * hours,
  };
}

/**
 * Range and bearing at a place in the plane. The bearing goes on from the old one by the angle that the aircraft has
 * moved about the station, so it never jumps by a whole turn.
 */
export function polarAt(
  { eastNm: x, northNm: y }: Place,
  before: StateMean,
): Pick<StateMean, 'lnRange' | 'bearingRad'> {
  const { eastNm: x0, northNm: y0 } = placeOf(before);
  return {
    lnRange: clampLnRange(Math.log(Math.max(Math.hypot(x, y), LEAST_RANGE_NM))),
    bearingRad: before.bearingRad + Math.atan2(x * y0 - y * x0, x0 * x + y0 * y),
  };
}

/**
 * The state after flying a path through the air: exact, no linearisation.
 *
 * `trueAirspeedKt` is the aircraft's stated one.
 */
export function moved(mean: StateMean, path: AirPath, trueAirspeedKt: number): StateMean {
  return {
    ...mean,
    ...polarAt(placeAfter(mean, path, trueAirspeedKt), mean),
    vorBiasDeg: mean.vorBiasDeg * biasKept(path.durationS),
  };
}
