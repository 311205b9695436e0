import { joinAhead } from './arc-join.ts';
import { pastAbeamDeg, radialSdDeg } from './deviation.ts';
import type { Estimate } from './estimate-record.ts';

/** So far on both sides of abeam the flag may show OFF, degrees. *Source:* as for `flagOn` of the panel. */
const ABEAM_DEG = 10;

/**
 * Whether the aircraft flies about its arc, where the OBS follows the radials; false on any other leg, before the
 * turn onto the arc, and while nothing tells where the aircraft is.
 */
export function isAboutArc({ scene, belief, isPlaced, headingDeg }: Estimate): boolean {
  if (!scene.arc || !isPlaced) return false;
  return joinAhead(belief.mean, scene, scene.arc, headingDeg) === null;
}

/**
 * An estimate as the alerts are to see it: about an arc any course may be set with either flag, and OFF is what
 * it shows abeam the course that is set. Elsewhere unchanged.
 */
export function withAnyCourse(estimate: Estimate): Estimate {
  const { scene, readings, belief, flag } = estimate;
  const last = readings.findLast((each) => each.station === undefined);
  if (last === undefined || !isAboutArc(estimate)) return estimate;
  const pastDeg = pastAbeamDeg(belief.mean, scene, last.courseSetDeg);
  const isAbeam = Math.abs(pastDeg) < ABEAM_DEG + 3 * radialSdDeg(belief);
  return {
    ...estimate,
    scene: { ...scene, isTo: true, courseDeg: last.courseSetDeg },
    // Either flag is then as good as one that was seen to turn.
    hasPassed: true,
    flag: flag === 'off' && isAbeam ? null : flag,
  };
}
