import { MS_PER_S } from '../base/units.ts';
import { airPath } from './air-path.ts';
import type { Belief } from './belief.ts';
import type { Estimate } from './estimate-record.ts';
import { placeOf } from './place.ts';
import { predict } from './predict.ts';
import { planeFromMagneticDeg } from './scene.ts';
import { changesOf, turnedBy } from './told-path.ts';

/** The belief, and the heading held, at a later moment if the headings told are flown until then. */
export function onwardTo(
  estimate: Estimate,
  atMs: number,
): { readonly belief: Belief; readonly headingDeg: number | null } {
  const { belief, headingDeg, plan, scene } = estimate;
  if (estimate.atMs === null || headingDeg === null) return { belief, headingDeg };
  const durationS = Math.max(0, (atMs - estimate.atMs) / MS_PER_S);
  const path = airPath(headingDeg, changesOf(plan), durationS);
  if (!estimate.isPlaced) return { belief, headingDeg: path.endHeadingDeg };
  const turned = turnedBy(path, planeFromMagneticDeg(scene, placeOf(belief.mean)));
  return {
    belief: predict(belief, turned, scene.trueAirspeedKt),
    headingDeg: path.endHeadingDeg,
  };
}
