import { pastAbeamDeg, radialSdDeg } from './deviation.ts';
import type { Estimate } from './estimate-record.ts';

/** So far on both sides of abeam the flag may show OFF, degrees. *Source:* as for `flagOn` of the panel. */
const ABEAM_DEG = 10;

/**
 * An estimate as the alerts are to see it: on an arc the OBS follows the radials, so any course may be set, and
 * OFF is what the flag shows abeam the course that is set. On any other leg: unchanged.
 */
export function withAnyCourse(estimate: Estimate): Estimate {
  const { scene, readings, belief, flag, isPlaced } = estimate;
  const last = readings.findLast((each) => each.station === undefined);
  if (!scene.arc || last === undefined) return estimate;
  const pastDeg = pastAbeamDeg(belief.mean, scene, last.courseSetDeg);
  const isAbeam = isPlaced && Math.abs(pastDeg) < ABEAM_DEG + 3 * radialSdDeg(belief);
  return {
    ...estimate,
    scene: { ...scene, courseDeg: last.courseSetDeg },
    flag: flag === 'off' && isAbeam ? null : flag,
  };
}
