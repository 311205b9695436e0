import { HEADING_ERROR, STATE_SIZE } from './belief.ts';
import type { Belief } from './belief.ts';
import type { Interval } from './carry-on.ts';
import type { Estimate } from './estimate-record.ts';
import { isMisfit, judge } from './judge.ts';
import { likelihoodOf } from './likelihood.ts';
import type { Reading } from './reading.ts';
import { reverseCause } from './reverse-sensing.ts';
import type { Scene } from './scene.ts';
import { isJumpTold } from './told-jump.ts';
import { HEADING_ERROR_SD_DEG } from './tuning.ts';
import type { Suspicion } from './watch-record.ts';

/** So many readings after the alert was told last the indicator may be set again. Common practice, no source. */
const AWAITED_FOR = 4;
/** A reset explains the reading better than what was told by this much, and hardly worse than trust. Tuned likewise. */
const BETTER_THAN_TOLD = 0.5;
const WORSE_THAN_TRUST = -2;

/** For how many readings a reset is awaited, the coming one included. */
export function resetAwaited(before: Estimate): number {
  const isTold = isJumpTold(before, reverseCause(before) === 'needle-backwards');
  return isTold ? AWAITED_FOR : Math.max(0, before.watch.resetAwaited - 1);
}

/**
 * What is believed, carried on to a reading, if the pilot has set the direction indicator by the compass since the
 * last one; null where the reading does not speak for it.
 *
 * It starts from what the alert was told on: air and place as they are if the indicator had jumped, and the heading
 * error that of an indicator just set.
 */
export function afterReset(
  before: Estimate,
  { carryOn, durationS }: Interval,
  reading: Reading,
): Belief | null {
  if (durationS <= 0 || resetAwaited(before) === 0) return null;
  const told = likeliest(before.watch.jumps);
  if (!told) return null;
  const { scene } = before;
  const reset = carryOn(justSet(told));
  if (isMisfit(judge(reset, scene, reading))) return null;
  const [ifReset, ifTold, ifTrusted] = [reset, carryOn(told), carryOn(before.belief)].map((each) =>
    lnLikely(each, scene, reading),
  );
  if (ifReset === undefined || ifTold === undefined || ifTrusted === undefined) return null;
  const isReset = ifReset - ifTold > BETTER_THAN_TOLD && ifReset - ifTrusted > WORSE_THAN_TRUST;
  return isReset ? reset : null;
}

function lnLikely(belief: Belief, scene: Scene, reading: Reading): number {
  const { lnNeedle, lnDme } = likelihoodOf(belief, scene, reading);
  return lnNeedle + lnDme;
}

function likeliest(jumps: readonly Suspicion[]): Belief | null {
  const weight = Math.max(...jumps.map((each) => each.weight));
  return jumps.find((each) => each.weight === weight)?.belief ?? null;
}

/** A belief in which the direction indicator has just been set, whatever it showed before. */
function justSet({ mean, covariance }: Belief): Belief {
  const isOfHeading = (at: number): boolean =>
    at % STATE_SIZE === HEADING_ERROR || Math.floor(at / STATE_SIZE) === HEADING_ERROR;
  const alone = covariance.map((each, at) => (isOfHeading(at) ? 0 : each));
  alone[HEADING_ERROR * STATE_SIZE + HEADING_ERROR] = HEADING_ERROR_SD_DEG ** 2;
  return { mean: { ...mean, headingErrorDeg: 0 }, covariance: alone };
}
