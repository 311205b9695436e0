import type { Estimate } from './estimate-record.ts';
import { greatestWeight } from './watch-record.ts';

/** Logarithm of a likelihood ratio. Tuned by simulation (tests/bench/track-faults.ts). */
const JUMP = 5.5;
/** Without DME the distance, and with it the needle's motion, is less certain: so much more weight is asked for. */
export const SURER_WITHOUT_DME = 1;
/** A single reading may be a slip: a suspicion rests on at least two. Common practice, no source. */
export const LEAST_COUNT = 2;

/** Whether a DME or a flag is in doubt: then the place is in question, and says nothing about the heading. */
function isPlaceInQuestion({ doubt, jump }: Estimate): boolean {
  return doubt?.misfit.dme === true || doubt?.misfit.flag === true || jump?.misfit.dme === true;
}

/** Whether a direction indicator that has jumped is told (`isReversed`: the needle is told as read backwards). */
export function isJumpTold(estimate: Estimate, isReversed: boolean): boolean {
  const surer = estimate.scene.dme ? 0 : SURER_WITHOUT_DME;
  const isJump = greatestWeight(estimate.watch.jumps, LEAST_COUNT) >= JUMP + surer;
  return isJump && !isReversed && !isPlaceInQuestion(estimate);
}
