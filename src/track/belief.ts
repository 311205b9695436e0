/**
 * What is estimated, with the station as the centre. Log-polar, because then the needle is exactly
 * linear in it and an unknown range stays an unknown *factor*.
 */
export interface StateMean {
  /** Natural logarithm of the ground range from the station, range in NM. */
  readonly lnRange: number;
  /** Bearing from the station, radians from true north at the station; not wrapped. */
  readonly bearingRad: number;
  /** Where the wind blows to, knots east at the station's north. */
  readonly windEastKt: number;
  readonly windNorthKt: number;
  /** Indicated radial minus true radial, degrees. */
  readonly vorBiasDeg: number;
  /** True airspeed minus the aircraft's stated one, knots. */
  readonly airspeedErrorKt: number;
  /** Heading flown minus heading shown, degrees. */
  readonly headingErrorDeg: number;
}

/** How many numbers are estimated. */
export const STATE_SIZE = 7;

/** Place of each number in the covariance. */
export const LN_RANGE = 0;
export const BEARING = 1;
export const WIND_EAST = 2;
export const WIND_NORTH = 3;
export const VOR_BIAS = 4;
export const AIRSPEED_ERROR = 5;
export const HEADING_ERROR = 6;

/** A Gaussian belief about the state: its mean, and its covariance row by row (7 x 7, symmetric). */
export interface Belief {
  readonly mean: StateMean;
  readonly covariance: readonly number[];
}
