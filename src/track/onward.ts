import { MS_PER_S } from '../base/units.ts';
import { airPath } from './air-path.ts';
import type { Estimate } from './estimate-record.ts';
import { asBeforeStation, pathSince } from './over-station.ts';
import { placeOf } from './place.ts';
import { predict } from './predict.ts';
import { planeFromMagneticDeg } from './scene.ts';
import { changesOf, turnedBy } from './told-path.ts';
import { LONGEST_GAP_S } from './tuning.ts';

/** The belief, and the heading held, at a later moment if the headings told are flown until then. */
export function onwardTo(
  estimate: Estimate,
  atMs: number,
): Pick<Estimate, 'belief' | 'headingDeg' | 'overStation'> {
  const { headingDeg, plan, scene, overStation } = estimate;
  const { belief } = asBeforeStation(estimate);
  if (estimate.atMs === null || headingDeg === null) {
    return { belief: estimate.belief, headingDeg, overStation };
  }
  const durationS = Math.max(0, (atMs - estimate.atMs) / MS_PER_S);
  const path = pathSince(overStation, airPath(headingDeg, changesOf(plan), durationS));
  if (!estimate.isPlaced) return { belief, headingDeg: path.endHeadingDeg, overStation };
  const turned = turnedBy(path, planeFromMagneticDeg(scene, placeOf(belief.mean)));
  return {
    belief: predict(belief, turned, scene.trueAirspeedKt),
    headingDeg: path.endHeadingDeg,
    overStation: overStation && { ...overStation, path },
  };
}

/**
 * The estimate carried on to a later moment by the headings told, as what another leg takes over from. Unchanged
 * where nothing tells where the aircraft is, or the moment does not lie ahead, or too far ahead.
 */
export function carriedOnTo(estimate: Estimate, atMs: number): Estimate {
  if (estimate.atMs === null || !estimate.isPlaced || estimate.headingDeg === null) return estimate;
  const durationMs = atMs - estimate.atMs;
  if (durationMs <= 0 || durationMs > LONGEST_GAP_S * MS_PER_S) return estimate;
  return { ...estimate, ...onwardTo(estimate, atMs), atMs };
}
