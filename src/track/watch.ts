import type { Belief } from './belief.ts';
import { likelihoodOf } from './likelihood.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { watchJumps, watchReversed, withJump } from './watch-others.ts';
import type { Watch } from './watch-record.ts';
import { watchDme, watchNeedle } from './watch-stuck.ts';

/** What goes before a reading: the main belief after the last one, and what carries a belief on to this one. */
export interface BeforeReading {
  readonly belief: Belief;
  readonly carryOn: (belief: Belief) => Belief;
  readonly readings: readonly Reading[];
}

/**
 * The suspicions after one more reading.
 *
 * Beside the main belief goes one for each thing that can be wrong; each reading adds to its weight how much
 * better it explains that reading, down to 0 (cumulative sum of log-likelihood ratios).
 * *Source:* Page, Continuous inspection schemes, Biometrika 41 (1954) 100-115; for unknown times of a jump,
 * Willsky, Jones, IEEE Trans. Automatic Control 21 (1976) 108-112.
 */
export function watchReading(
  watch: Watch,
  before: BeforeReading,
  predicted: Belief,
  scene: Scene,
  reading: Reading,
): Watch {
  const trusted = likelihoodOf(predicted, scene, reading);
  const { belief, carryOn, readings } = before;
  const last = readings.at(-1) ?? null;
  const reversedBelief = watch.reversed.belief && carryOn(watch.reversed.belief);
  const jumpBeliefs = [...watch.jumps.map((each) => each.belief ?? belief), withJump(belief)];
  return {
    ...watchNeedle(watch, predicted, scene, reading, readings),
    stuckDme: watchDme(watch.stuckDme, predicted, scene, reading, last),
    reversed: watchReversed(watch.reversed, reversedBelief, trusted, scene, reading),
    jumps: watchJumps(watch.jumps, jumpBeliefs.map(carryOn), trusted, scene, reading),
  };
}
