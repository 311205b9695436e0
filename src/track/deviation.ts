import { DEG_PER_RAD, RAD_PER_DEG, wrap180 } from '../base/angle.ts';
import type { Belief, StateMean } from './belief.ts';
import { varianceAlong } from './correct.ts';
import type { Scene } from './scene.ts';

/** The radial that the station seems to put the aircraft on, by its declination; not wrapped, degrees. */
export function indicatedRadialDeg(mean: StateMean, scene: Scene): number {
  return mean.bearingRad * DEG_PER_RAD - scene.declinationDegEast + mean.vorBiasDeg;
}

/**
 * Where the needle should stand, degrees, right positive, for an OBS setting and a flag.
 *
 * Not clipped to the instrument's scale.
 */
export function needleDeg(radialDeg: number, courseSetDeg: number, flag: 'to' | 'from'): number {
  return flag === 'from'
    ? -wrap180(radialDeg - courseSetDeg)
    : wrap180(radialDeg - courseSetDeg - 180);
}

/** Derivative of the needle (degrees) by the state: exactly linear. */
export function needleSlope(flag: 'to' | 'from'): readonly number[] {
  const sign = flag === 'from' ? -1 : 1;
  return [0, sign * DEG_PER_RAD, 0, 0, sign, 0, 0];
}

/** Standard deviation of the indicated radial, degrees. */
export function radialSdDeg(belief: Belief): number {
  return Math.sqrt(varianceAlong(belief, needleSlope('to')));
}

/**
 * How far the indicated radial is past abeam, degrees: positive where the flag should show FROM for this
 * OBS setting, negative where TO.
 */
export function pastAbeamDeg(mean: StateMean, scene: Scene, courseSetDeg: number): number {
  return 90 - Math.abs(wrap180(indicatedRadialDeg(mean, scene) - courseSetDeg));
}

/** Direction of the leg's indicated radial line in the plane, the way it is flown, degrees. */
export function lineDegTrue(mean: StateMean, scene: Scene): number {
  return scene.courseDegTrue - mean.vorBiasDeg;
}

/** Distance right of the indicated radial line of the leg, seen the way it is flown, NM. */
export function crossTrackNm(mean: StateMean, scene: Scene): number {
  const rangeNm = Math.exp(mean.lnRange);
  return rangeNm * Math.sin(mean.bearingRad - lineDegTrue(mean, scene) * RAD_PER_DEG);
}
