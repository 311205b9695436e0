import type { Belief } from './belief.ts';
import { likelihoodOf } from './likelihood.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { JUMPS_KEPT, REVERSALS_KEPT, followed, reversedReading, withJump } from './watch-others.ts';
import type { Suspicion, Watch } from './watch-record.ts';
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
  const on = (each: Suspicion): Belief => carryOn(each.belief ?? belief);
  const reversed = [...watch.reversed.map(on), predicted];
  const jumped = [...watch.jumps.map(on), carryOn(withJump(belief))];
  const backwards = reversedReading(reading);
  return {
    ...watch,
    ...watchNeedle(watch, predicted, scene, reading, readings),
    stuckDme: watchDme(watch.stuckDme, predicted, scene, reading, last),
    reversed: followed(watch.reversed, reversed, trusted, scene, backwards, REVERSALS_KEPT),
    jumps: followed(watch.jumps, jumped, trusted, scene, reading, JUMPS_KEPT),
  };
}

/** The suspicions carried on over an interval at whose end nothing was watched. */
export function watchCarriedOn(watch: Watch, carryOn: (belief: Belief) => Belief): Watch {
  const on = (each: Suspicion): Suspicion =>
    each.belief ? { ...each, belief: carryOn(each.belief) } : each;
  return { ...watch, reversed: watch.reversed.map(on), jumps: watch.jumps.map(on) };
}

/** The suspicions after a reading while the bearing is open: then only the DME shows whether it stands still. */
export function watchWhileOpen(
  watch: Watch,
  { carryOn, readings }: BeforeReading,
  predicted: Belief,
  scene: Scene,
  reading: Reading,
): Watch {
  const stuckDme = watchDme(watch.stuckDme, predicted, scene, reading, readings.at(-1) ?? null);
  return { ...watchCarriedOn(watch, carryOn), stuckDme };
}
