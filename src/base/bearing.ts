import { wrap360 } from './angle.ts';

declare const north: unique symbol;

/** A direction from true north at the place where it is taken, degrees, 0 <= x < 360. */
export type TrueDeg = number & { readonly [north]: 'true' };

/** A direction from magnetic north by the local variation on the day, degrees, 0 <= x < 360. */
export type MagneticDeg = number & { readonly [north]: 'magnetic' };

/**
 * A direction from the zero radial of one station, degrees, 0 <= x < 360: its radials and the courses
 * set on the OBS. The station's own declination relates it to true north, not today's variation.
 */
export type StationDeg = number & { readonly [north]: 'station' };

/** Marks an angle as taken from true north; wraps it into 0 <= x < 360. */
export function trueDeg(angleDeg: number): TrueDeg {
  return wrap360(angleDeg) as TrueDeg;
}

/** Marks an angle as taken from local magnetic north; wraps it into 0 <= x < 360. */
export function magneticDeg(angleDeg: number): MagneticDeg {
  return wrap360(angleDeg) as MagneticDeg;
}

/** Marks an angle as taken from a station's zero radial; wraps it into 0 <= x < 360. */
export function stationDeg(angleDeg: number): StationDeg {
  return wrap360(angleDeg) as StationDeg;
}
