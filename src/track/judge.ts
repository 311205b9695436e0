import type { Belief } from './belief.ts';
import { pastAbeamDeg, radialSdDeg } from './deviation.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { GATE_SURPRISE } from './tuning.ts';
import { dmeCorrection } from './update-dme.ts';
import { isSaturated, needleCorrection } from './update-needle.ts';

/** Which parts of a reading do not fit what is believed. A part that was not read fits. */
export interface Misfit {
  readonly needle: boolean;
  readonly dme: boolean;
  /** The flag contradicts the geometry; the needle then has no meaning either. */
  readonly flag: boolean;
}

/** Nothing to object to. */
export const FITS: Misfit = { needle: false, dme: false, flag: false };

/** Whether any part of a reading does not fit. */
export function isMisfit(misfit: Misfit): boolean {
  return misfit.needle || misfit.dme || misfit.flag;
}

/** A flag contradicts the geometry only this far beyond abeam, plus three standard deviations. */
const ABEAM_MARGIN_DEG = 5;

/** Whether TO or FROM is impossible for where the aircraft is believed to be. */
function isFlagContradicting(belief: Belief, scene: Scene, reading: Reading): boolean {
  if (reading.flag === 'off') return false;
  const pastDeg = pastAbeamDeg(belief.mean, scene, reading.courseSetDeg);
  const shouldBeFrom = pastDeg > 0;
  if (shouldBeFrom === (reading.flag === 'from')) return false;
  return Math.abs(pastDeg) > 3 * radialSdDeg(belief) + ABEAM_MARGIN_DEG;
}

/** Whether the needle surprises by more than the gate; a needle on its stop may only be too far inside. */
function isNeedleMisfit(belief: Belief, scene: Scene, reading: Reading): boolean {
  const { needleDots, flag, courseSetDeg } = reading;
  if (needleDots === undefined || flag === 'off') return false;
  const correction = needleCorrection(belief, scene, { needleDots, flag, courseSetDeg });
  if (!correction) return false;
  // On the stop the mean of the bounded number lies about as many sd from the expected as the stop does.
  const slackVariance = isSaturated(needleDots, scene) ? 1.12 : 1;
  return correction.surprise ** 2 > GATE_SURPRISE * slackVariance * correction.variance;
}

/**
 * Which parts of a reading do not fit a belief (already carried on to its time): needle or DME off by more
 * than four standard deviations, a flag on the wrong side of abeam.
 */
export function judge(belief: Belief, scene: Scene, reading: Reading): Misfit {
  const flag = isFlagContradicting(belief, scene, reading);
  const needle = !flag && isNeedleMisfit(belief, scene, reading);
  if (reading.dmeNm === undefined || !scene.dme) return { needle, dme: false, flag };
  const { surprise, variance } = dmeCorrection(belief, scene.dme, reading.dmeNm);
  return { needle, dme: surprise ** 2 > GATE_SURPRISE * variance, flag };
}
