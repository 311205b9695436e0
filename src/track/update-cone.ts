import type { Belief } from './belief.ts';
import { boundCorrection } from './bound.ts';
import { correct } from './correct.ts';
import type { Scene } from './scene.ts';
import { CONE_EDGE_SD_LN } from './tuning.ts';

const LN_RANGE_SLOPE = [1, 0, 0, 0, 0, 0, 0] as const;

/** A bound this many standard deviations away is not worth its cost. */
const FAR_INSIDE = 3;

/**
 * The belief after the flag told on which side of the cone's edge the aircraft is.
 *
 * A valid flag: outside; OFF: inside. Matters only without DME. Unchanged when that was clear anyway.
 */
export function updateCone(belief: Belief, scene: Scene, isInside: boolean): Belief {
  if (scene.coneRadiusNm <= 0) return belief;
  const limit = Math.log(scene.coneRadiusNm);
  const side = isInside ? -1 : 1;
  const sd = Math.sqrt((belief.covariance[0] ?? 0) + CONE_EDGE_SD_LN ** 2);
  if ((side * (belief.mean.lnRange - limit)) / sd > FAR_INSIDE) return belief;
  const correction = boundCorrection(
    belief,
    LN_RANGE_SLOPE,
    { side, limit, expected: belief.mean.lnRange },
    CONE_EDGE_SD_LN ** 2,
  );
  return correction ? correct(belief, correction) : belief;
}
