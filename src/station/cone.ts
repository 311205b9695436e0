import { RAD_PER_DEG } from '../base/angle.ts';
import { FT_PER_NM } from '../base/units.ts';

/** Half of the blind cone over a VOR, degrees from the vertical. *Source:* as for `coneRadiusNm`. */
const CONE_HALF_ANGLE_DEG = 50;

/**
 * Ground distance from a VOR within which its bearing and flag tell nothing, NM.
 *
 * `heightFt` above the antenna; 0 at and below its level. 10,000 ft give 1.96 NM.
 * *Source:* ICAO Doc 8168 vol. I (PANS-OPS), I-2-2-2, 2.4.4.1: cone of ambiguity of 50 degrees.
 */
export function coneRadiusNm(heightFt: number): number {
  return (Math.max(0, heightFt) / FT_PER_NM) * Math.tan(CONE_HALF_ANGLE_DEG * RAD_PER_DEG);
}
