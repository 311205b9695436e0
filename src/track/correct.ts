import type { Belief, StateMean } from './belief.ts';
import { dot, lessOuter, timesVector } from './matrix.ts';
import { meanOf, vectorOf } from './mean-vector.ts';
import { clampLnRange } from './motion.ts';

/** What one number that was read says about the state. */
export interface Correction {
  /** Derivative of the number by the state. */
  readonly slope: readonly number[];
  /** Read minus expected, in the number's own unit. */
  readonly surprise: number;
  /** Variance of the surprise: what the state leaves open, plus the reading's own error. */
  readonly variance: number;
  /** How much of that variance is left after the reading; 0 for an ordinary reading. */
  readonly varianceLeft: number;
}

/** Variance of a number that has this slope by the state. */
export function varianceAlong(belief: Belief, slope: readonly number[]): number {
  return Math.max(0, dot(slope, timesVector(belief.covariance, slope)));
}

/**
 * The belief after one number was read (sequential scalar update).
 *
 * *Source:* Bar-Shalom, Li, Kirubarajan, 2001, section 5.2, for one number at a time; `varianceLeft` makes it
 * the moment-matched update for a reading that only bounds the number.
 */
export function correct(belief: Belief, correction: Correction): Belief {
  const { surprise, variance, varianceLeft } = correction;
  const gain = gainOf(belief, correction);
  return {
    mean: shifted(belief.mean, gain, surprise),
    covariance: lessOuter(belief.covariance, gain, variance - varianceLeft),
  };
}

/** Only the mean of the same. */
export function correctMean(belief: Belief, correction: Correction): StateMean {
  return shifted(belief.mean, gainOf(belief, correction), correction.surprise);
}

function gainOf(belief: Belief, { slope, variance }: Correction): readonly number[] {
  const gain = timesVector(belief.covariance, slope);
  for (let index = 0; index < gain.length; index += 1) gain[index] = (gain[index] ?? 0) / variance;
  return gain;
}

function shifted(mean: StateMean, gain: readonly number[], surprise: number): StateMean {
  const moved = meanOf(vectorOf(mean).map((each, index) => each + (gain[index] ?? 0) * surprise));
  return { ...moved, lnRange: clampLnRange(moved.lnRange) };
}
