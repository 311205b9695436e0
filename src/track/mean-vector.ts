import type { StateMean } from './belief.ts';

/** The state as a vector in the order of the covariance. */
export function vectorOf(mean: StateMean): number[] {
  return [
    mean.lnRange,
    mean.bearingRad,
    mean.windEastKt,
    mean.windNorthKt,
    mean.vorBiasDeg,
    mean.airspeedErrorKt,
    mean.headingErrorDeg,
  ];
}

/** The state of a vector in the order of the covariance. */
export function meanOf(vector: readonly number[]): StateMean {
  return {
    lnRange: vector[0] ?? 0,
    bearingRad: vector[1] ?? 0,
    windEastKt: vector[2] ?? 0,
    windNorthKt: vector[3] ?? 0,
    vorBiasDeg: vector[4] ?? 0,
    airspeedErrorKt: vector[5] ?? 0,
    headingErrorDeg: vector[6] ?? 0,
  };
}
