import type { Belief } from './belief.ts';
import type { Correction } from './correct.ts';
import { varianceAlong } from './correct.ts';
import { millsRatio } from './normal.ts';

/** Beyond this many standard deviations on the right side a bound says nothing new. */
const SAYS_NOTHING = 6;

/**
 * What it says about the state that a number is above a limit (`side` 1) or below it (`side` -1); null
 * when that was certain anyway.
 *
 * `expected`: the number as the state has it; `noiseVariance`: of the reading. The truncated normal of the
 * number is replaced by the normal of the same mean and variance.
 * *Source:* moments of the truncated normal, e.g. Johnson, Kotz, Balakrishnan, Continuous Univariate
 * Distributions 1, 2nd ed., section 10.1.
 */
export function boundCorrection(
  belief: Belief,
  slope: readonly number[],
  bound: { readonly side: 1 | -1; readonly limit: number; readonly expected: number },
  noiseVariance: number,
): Correction | null {
  const variance = varianceAlong(belief, slope) + noiseVariance;
  const sd = Math.sqrt(variance);
  const depth = (bound.side * (bound.expected - bound.limit)) / sd;
  if (depth > SAYS_NOTHING) return null;
  const ratio = millsRatio(depth);
  return {
    slope,
    surprise: bound.side * sd * ratio,
    variance,
    varianceLeft: Math.max(0, variance * (1 - ratio * (ratio + depth))),
  };
}
