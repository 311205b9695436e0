import type { Belief } from './belief.ts';
import { correct } from './correct.ts';
import { isRangeKnown } from './how-far.ts';
import type { Misfit } from './judge.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { updateCone } from './update-cone.ts';
import { updateDme } from './update-dme.ts';
import { needleCorrection } from './update-needle.ts';

/** OFF farther out than this many cone radii (and 3 sd) is a failure, not the cone. Common practice, no source. */
const FAR_FROM_CONE = 1.6;

/** Farther out than this, NM over ground, OFF is not the cone. */
export function coneReachNm(scene: Scene): number {
  return FAR_FROM_CONE * scene.coneRadiusNm + 0.2;
}

/** Whether OFF can be the cone, for where the aircraft is believed to be. */
export function isConePossible(belief: Belief, scene: Scene): boolean {
  const sd = Math.sqrt(belief.covariance[0] ?? 0);
  const least = Math.exp(belief.mean.lnRange - 3 * sd);
  return least < coneReachNm(scene);
}

/**
 * Whether OFF is taken for the cone: it can be, and the range is known or the cone at least a fair guess (within
 * one standard deviation). Else it may as well be a lost signal, and tells nothing about the place.
 */
export function isOffTheCone(belief: Belief, scene: Scene): boolean {
  if (!isConePossible(belief, scene)) return false;
  const sd = Math.sqrt(belief.covariance[0] ?? 0);
  return isRangeKnown(belief) || Math.exp(belief.mean.lnRange - sd) < coneReachNm(scene);
}

/**
 * The belief after a reading, leaving out the parts that do not fit: DME first (it makes the needle's
 * meaning in NM sharp), then the needle, then what the flag says about the cone.
 */
export function takeIn(belief: Belief, scene: Scene, reading: Reading, misfit: Misfit): Belief {
  let result = belief;
  if (reading.dmeNm !== undefined && scene.dme && !misfit.dme) {
    result = updateDme(result, scene.dme, reading.dmeNm);
  }
  const { flag, needleDots, courseSetDeg } = reading;
  if (flag === 'off') {
    return isOffTheCone(result, scene) ? updateCone(result, scene, true) : result;
  }
  if (misfit.flag) return result;
  if (needleDots !== undefined && !misfit.needle) {
    const correction = needleCorrection(result, scene, { flag, needleDots, courseSetDeg });
    if (correction) result = correct(result, correction);
  }
  return updateCone(result, scene, false);
}
