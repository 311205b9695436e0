import { turnDeg } from '../base/angle.ts';
import type { StationDeg } from '../base/bearing.ts';

/** What the TO/FROM window shows; `off`: neither, the needle tells nothing. */
export type FlagShown = 'to' | 'from' | 'off';

/** On either side of the perpendicular to the set course, degrees. *Source:* as for `flagOn`. */
const ABEAM_HALF_WIDTH_DEG = 10;

/**
 * The flag for an aircraft on a radial with a course set: TO in the half of the circle from which the set
 * course leads to the station, FROM in the other, neither within 10 degrees of the perpendicular.
 *
 * Not looked at here: the cone over the station.
 * *Source:* FAA-H-8083-15B, Instrument Flying Handbook, ch. 9; the width of the band abeam from public
 * lecture notes on the VOR ("+/-10 degrees about the perpendicular"; no standard found).
 */
export function flagOn(radial: StationDeg, courseSet: StationDeg): FlagShown {
  const awayDeg = Math.abs(turnDeg(courseSet, radial));
  if (Math.abs(awayDeg - 90) <= ABEAM_HALF_WIDTH_DEG) return 'off';
  return awayDeg > 90 ? 'to' : 'from';
}
