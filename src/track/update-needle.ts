import type { Belief } from './belief.ts';
import { boundCorrection } from './bound.ts';
import { varianceAlong } from './correct.ts';
import type { Correction } from './correct.ts';
import { indicatedRadialDeg, needleDeg, needleSlope } from './deviation.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { NEEDLE_STEP_DOTS, SCALLOPING_SD_DEG } from './tuning.ts';

/** A needle that was read, with what gives it a meaning. */
export interface NeedleReading {
  readonly courseSetDeg: number;
  readonly flag: 'to' | 'from';
  readonly needleDots: number;
}

/** Whether the needle lies on its stop, so that it only tells a side. */
export function isSaturated(needleDots: number, scene: Scene): boolean {
  return Math.abs(needleDots) >= scene.dotsFullScale - 0.01;
}

/** Whether a reading has its needle on the stop, with a flag that gives it a side. */
export function isOnStop(scene: Scene, { needleDots, flag }: Reading): boolean {
  return needleDots !== undefined && flag !== 'off' && isSaturated(needleDots, scene);
}

/** Variance of one needle reading: what the beam does from place to place, and the step of reading. */
export function needleNoiseDeg2(scene: Scene): number {
  return SCALLOPING_SD_DEG ** 2 + (NEEDLE_STEP_DOTS * scene.degreesPerDot) ** 2 / 12;
}

/** Where the needle starts to be read as full deflection, degrees. */
export function saturationDeg(scene: Scene): number {
  return (scene.dotsFullScale - NEEDLE_STEP_DOTS / 2) * scene.degreesPerDot;
}

/**
 * What a needle says about the state. On its stop it only says that the radial is at least that far off:
 * a deep and expected full deflection then changes nothing, and null is given.
 */
export function needleCorrection(
  belief: Belief,
  scene: Scene,
  reading: NeedleReading,
): Correction | null {
  const slope = needleSlope(reading.flag);
  const radialDeg = indicatedRadialDeg(belief.mean, scene);
  const expected = needleDeg(radialDeg, reading.courseSetDeg, reading.flag);
  const noise = needleNoiseDeg2(scene);
  if (isSaturated(reading.needleDots, scene)) {
    const side = reading.needleDots > 0 ? 1 : -1;
    const limit = side * saturationDeg(scene);
    return boundCorrection(belief, slope, { side, limit, expected }, noise);
  }
  return {
    slope,
    surprise: reading.needleDots * scene.degreesPerDot - expected,
    variance: varianceAlong(belief, slope) + noise,
    varianceLeft: 0,
  };
}
