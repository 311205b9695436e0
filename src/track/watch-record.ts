import type { Belief } from './belief.ts';

/** One suspicion followed beside the main belief. */
export interface Suspicion {
  /** Logarithm of how much better it explains the readings than trust does; never below 0. */
  readonly weight: number;
  /** What would be believed if it is right; null while that is the main belief itself. */
  readonly belief: Belief | null;
  /** Readings that spoke for it since the weight was last 0. */
  readonly count: number;
}

/** What is watched for beside the tracking: plain data, part of the estimate. */
export interface Watch {
  readonly stuckNeedle: Suspicion;
  readonly stuckDme: Suspicion;
  /** A needle read the wrong way round since one of the last readings, oldest first. */
  readonly reversed: readonly Suspicion[];
  /** A direction indicator that jumped before one of the last readings, oldest first. */
  readonly jumps: readonly Suspicion[];
  /** For how many more readings the direction indicator may be set again, as the pilot was asked to see to. */
  readonly resetAwaited: number;
  /** How much the needle strays beside what is expected of it: sum of squared surprises over their variance. */
  readonly strayCount: number;
  readonly straySum: number;
}

const NONE: Suspicion = { weight: 0, belief: null, count: 0 };

/** Nothing suspected. Three readings of a somewhat calm needle are assumed to have gone before. */
export const NOTHING_SUSPECTED: Watch = {
  stuckNeedle: NONE,
  stuckDme: NONE,
  reversed: [],
  jumps: [],
  resetAwaited: 0,
  strayCount: 3,
  straySum: 2,
};

/** A suspicion after one more reading, `gain` being the logarithm of the ratio of likelihoods. */
export function weighed(before: Suspicion, gain: number, belief: Belief | null): Suspicion {
  const weight = before.weight + gain;
  if (weight <= 0) return NONE;
  return { weight, belief, count: before.count + (gain > 0 ? 1 : 0) };
}

/** The greatest weight of those that rest on at least so many readings; 0: there is none. */
export function greatestWeight(suspicions: readonly Suspicion[], leastCount: number): number {
  return suspicions.reduce(
    (greatest, { weight, count }) => (count < leastCount ? greatest : Math.max(greatest, weight)),
    0,
  );
}
