import type { Belief } from './belief.ts';
import { HEADING_ERROR, STATE_SIZE } from './belief.ts';
import type { Misfit } from './judge.ts';
import { likelihoodOf } from './likelihood.ts';
import type { Likelihood } from './likelihood.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { takeIn } from './take-in.ts';
import type { Suspicion } from './watch-record.ts';

/** How far back a direction indicator may have jumped, and a needle have been reversed, in readings. */
export const JUMPS_KEPT = 6;
export const REVERSALS_KEPT = 3;
/** Size of a jump: added spread of the heading error. A drift of 10 to 20 degrees, two intervals long. */
const JUMP_HEADING_DEG = 12;

/** What explains the readings worse than trust by this much is not followed any longer. */
const DROPPED_BELOW = -1.5;
/** The DME of a reading is already in. */
const DME_TAKEN: Misfit = { needle: false, dme: true, flag: false };

/** The reading as it would be if the needle worked backwards. */
export function reversedReading(reading: Reading): Reading {
  return reading.needleDots === undefined
    ? reading
    : { ...reading, needleDots: -reading.needleDots };
}

/** A belief in which the direction indicator may just have jumped. */
export function withJump(belief: Belief): Belief {
  const covariance = [...belief.covariance];
  const at = HEADING_ERROR * STATE_SIZE + HEADING_ERROR;
  covariance[at] = (covariance[at] ?? 0) + JUMP_HEADING_DEG ** 2;
  return { mean: belief.mean, covariance };
}

/**
 * The same suspicion, begun at each of the last readings, after one more (`ifSo`: as it reads if the suspicion is
 * right). Each goes on from where it began, so that one that began in time is not spoilt by what trust has made
 * of the readings since.
 *
 * `predictedIfSo`: what is believed in each, and in a new one that begins now, carried on to the reading.
 * `kept`: how many. *Source:* Willsky, Jones, IEEE Trans. Automatic Control 21 (1976) 108-112.
 */
export function followed(
  before: readonly Suspicion[],
  predictedIfSo: readonly Belief[],
  trusted: Likelihood,
  scene: Scene,
  ifSo: Reading,
  kept: number,
): readonly Suspicion[] {
  const after: Suspicion[] = [];
  predictedIfSo.forEach((belief, index) => {
    const { weight, count } = before[index] ?? { weight: 0, count: 0 };
    const likely = likelihoodOf(belief, scene, ifSo);
    const gain = likely.lnNeedle + likely.lnDme - trusted.lnNeedle - trusted.lnDme;
    if (weight + gain <= DROPPED_BELOW) return;
    after.push({
      weight: weight + gain,
      belief: takeIn(likely.givenDme, scene, ifSo, DME_TAKEN),
      count: count + (gain > 0 ? 1 : 0),
    });
  });
  return after.slice(-kept);
}
