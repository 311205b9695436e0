import type { Belief } from './belief.ts';
import { HEADING_ERROR, STATE_SIZE, WIND_EAST, WIND_NORTH } from './belief.ts';
import type { Misfit } from './judge.ts';
import { likelihoodOf, lnNeedleOf } from './likelihood.ts';
import type { Likelihood } from './likelihood.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { takeIn } from './take-in.ts';
import { weighed } from './watch-record.ts';
import type { Suspicion } from './watch-record.ts';

/** How many of the last readings a jump may have come before. */
const JUMPS_KEPT = 6;
/** Size of a jump: added spread of the heading error and of each wind component. */
const JUMP_HEADING_DEG = 10;
const JUMP_WIND_KT = 10;

/** A jump that explains the readings worse than trust by this much is not followed any longer. */
const DROPPED_BELOW = -1.5;
/** The DME of a reading is already in. */
const DME_TAKEN: Misfit = { needle: false, dme: true, flag: false };

/** The reading as it would be if the needle worked backwards. */
function reversedReading(reading: Reading): Reading {
  return reading.needleDots === undefined
    ? reading
    : { ...reading, needleDots: -reading.needleDots };
}

/**
 * The suspicion that the needle is read the wrong way round.
 *
 * `predictedIfSo`: what would be believed, carried on to the reading; null while that is the main belief.
 */
export function watchReversed(
  before: Suspicion,
  predictedIfSo: Belief | null,
  trusted: Likelihood,
  scene: Scene,
  reading: Reading,
): Suspicion {
  if (reading.needleDots === undefined || reading.flag === 'off') return before;
  const mirrored = reversedReading(reading);
  const ifSo = predictedIfSo
    ? likelihoodOf(predictedIfSo, scene, mirrored)
    : { ...trusted, lnNeedle: lnNeedleOf(trusted.givenDme, scene, mirrored) };
  const gain = ifSo.lnNeedle + ifSo.lnDme - trusted.lnNeedle - trusted.lnDme;
  if (before.weight + gain <= 0) return weighed(before, gain, null);
  return weighed(before, gain, takeIn(ifSo.givenDme, scene, mirrored, DME_TAKEN));
}

/** A belief in which the wind or the direction indicator may just have jumped. */
export function withJump(belief: Belief): Belief {
  const covariance = [...belief.covariance];
  const widen = (index: number, sd: number): void => {
    const at = index * STATE_SIZE + index;
    covariance[at] = (covariance[at] ?? 0) + sd ** 2;
  };
  widen(WIND_EAST, JUMP_WIND_KT);
  widen(WIND_NORTH, JUMP_WIND_KT);
  widen(HEADING_ERROR, JUMP_HEADING_DEG);
  return { mean: belief.mean, covariance };
}

/**
 * The suspicions of a jump before one of the last six readings, with the newest added.
 *
 * `predictedIfSo`: for each kept one and for a new one, its belief carried on to this reading.
 */
export function watchJumps(
  before: readonly Suspicion[],
  predictedIfSo: readonly Belief[],
  trusted: Likelihood,
  scene: Scene,
  reading: Reading,
): readonly Suspicion[] {
  const fresh: Suspicion = { weight: 0, belief: null, count: 0 };
  return [...before, fresh]
    .map((each, index): Suspicion => {
      const belief = predictedIfSo[index];
      if (!belief) return each;
      const ifSo = likelihoodOf(belief, scene, reading);
      const gain = ifSo.lnNeedle + ifSo.lnDme - trusted.lnNeedle - trusted.lnDme;
      return {
        weight: each.weight + gain,
        belief: takeIn(ifSo.givenDme, scene, reading, DME_TAKEN),
        count: each.count + (gain > 0 ? 1 : 0),
      };
    })
    .filter(({ weight }) => weight > DROPPED_BELOW)
    .slice(-JUMPS_KEPT);
}
