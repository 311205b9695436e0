import { geodesicTo } from '../../earth/geodesic.ts';
import { lineOfSightNm } from '../../station/line-of-sight.ts';
import type { Station } from '../../station/station.ts';
import type { PlacedLeg } from './route-leg.ts';

/** Frequencies nearer than this are the same channel, MHz. */
const SAME_MHZ = 0.001;
/** Two rows this near to each other are the same station, NM. */
const SAME_PLACE_NM = 1;

/** Another station, and how far it is from the nearer end of the leg. */
export interface OtherStation<Other extends Station = Station> {
  readonly station: Other;
  readonly distanceNm: number;
}

/**
 * Other stations on the frequency of a leg's station that may be heard at its start or end; nearest first.
 *
 * Counted to the horizon at the altitude, which is farther than any station is promised to be received: the wrong
 * one is heard all the better where the right one is weak.
 */
export function othersOnFrequency<Other extends Station>(
  { station, start, end }: PlacedLeg,
  altitudeFt: number,
  stations: readonly Other[],
): readonly OtherStation<Other>[] {
  return stations
    .filter((other) => isAnotherOnFrequency(station, other))
    .map((other) => ({
      station: other,
      distanceNm: Math.min(geodesicTo(start, other).distanceNm, geodesicTo(end, other).distanceNm),
    }))
    .filter((other) => other.distanceNm < lineOfSightNm(altitudeFt, other.station.elevationFt))
    .toSorted((one, other) => one.distanceNm - other.distanceNm);
}

/** The warning of them in one plain sentence; empty when there is none. */
export function sharedFrequencyWarnings(others: readonly OtherStation[]): readonly string[] {
  const [nearest] = others;
  if (!nearest) return [];
  const more = others.length === 1 ? '' : ` (and ${others.length - 1} more)`;
  return [
    `${nearest.station.ident} is on the same frequency, ${nearest.distanceNm.toFixed(0)} NM from this leg${more}: ` +
      'identify before you trust the needle.',
  ];
}

/** Whether two stations are on one channel, and not the same one in two rows. */
export function isAnotherOnFrequency(station: Station, other: Station): boolean {
  const apartMhz = Math.abs((station.frequencyMhz ?? NaN) - (other.frequencyMhz ?? NaN));
  return apartMhz < SAME_MHZ && geodesicTo(other, station).distanceNm > SAME_PLACE_NM;
}
