/** Radians in one degree. */
export const RAD_PER_DEG = Math.PI / 180;

/** Degrees in one radian. */
export const DEG_PER_RAD = 180 / Math.PI;

/**
 * The same direction as an angle in 0 <= x < 360.
 *
 * `angleDeg`: any finite angle, degrees. The one place where an angle is wrapped.
 */
export function wrap360(angleDeg: number): number {
  const wrapped = angleDeg % 360;
  const positive = wrapped < 0 ? wrapped + 360 : wrapped;
  // -1e-15 + 360 rounds to 360 exactly, and -0 should read 0.
  return positive >= 360 ? 0 : positive + 0;
}

/**
 * The same turn as an angle in -180 < x <= 180: positive clockwise (right), negative left.
 *
 * `angleDeg`: any finite angle, degrees.
 */
export function wrap180(angleDeg: number): number {
  const wrapped = wrap360(angleDeg);
  return wrapped > 180 ? wrapped - 360 : wrapped;
}

/** The turn from one direction to another, degrees, -180 < x <= 180, right positive. */
export function turnDeg(fromDeg: number, toDeg: number): number {
  return wrap180(toDeg - fromDeg);
}

/** The opposite direction, degrees, 0 <= x < 360. */
export function reciprocalDeg(bearingDeg: number): number {
  return wrap360(bearingDeg + 180);
}

/** Arc sine in degrees; an argument that rounding has carried past +-1 counts as +-1. */
export function asinDeg(ratio: number): number {
  return Math.asin(Math.min(1, Math.max(-1, ratio))) * DEG_PER_RAD;
}

/** Sine of an angle in degrees. */
export function sinDeg(angleDeg: number): number {
  return Math.sin(angleDeg * RAD_PER_DEG);
}

/** Cosine of an angle in degrees. */
export function cosDeg(angleDeg: number): number {
  return Math.cos(angleDeg * RAD_PER_DEG);
}

/** Direction of a vector with east and north parts, degrees from north, 0 <= x < 360; 0 for no vector. */
export function directionDeg(east: number, north: number): number {
  return wrap360(Math.atan2(east, north) * DEG_PER_RAD);
}
