import type { Belief } from './belief.ts';
import { HEADING_ERROR, STATE_SIZE, WIND_EAST, WIND_NORTH } from './belief.ts';
import { FITS } from './judge.ts';
import { likelihoodOf } from './likelihood.ts';
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

function sumOf({ lnNeedle, lnDme }: Likelihood): number {
  return lnNeedle + lnDme;
}

/** The reading as it would be if the needle worked backwards. */
function reversedReading(reading: Reading): Reading {
  return reading.needleDots === undefined
    ? reading
    : { ...reading, needleDots: -reading.needleDots };
}

/** The suspicion that the needle is read the wrong way round. `predicted`: the main belief at its time. */
export function watchReversed(
  before: Suspicion,
  predictedIfSo: Belief,
  predicted: Belief,
  scene: Scene,
  reading: Reading,
): Suspicion {
  if (reading.needleDots === undefined || reading.flag === 'off') return before;
  const mirrored = reversedReading(reading);
  const ifSo = sumOf(likelihoodOf(predictedIfSo, scene, mirrored));
  const trusted = sumOf(likelihoodOf(predicted, scene, reading));
  return weighed(before, ifSo - trusted, takeIn(predictedIfSo, scene, mirrored, FITS));
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
      const gain = sumOf(likelihoodOf(belief, scene, reading)) - sumOf(trusted);
      return {
        weight: each.weight + gain,
        belief: takeIn(belief, scene, reading, FITS),
        count: each.count + (gain > 0 ? 1 : 0),
      };
    })
    .slice(-JUMPS_KEPT);
}
