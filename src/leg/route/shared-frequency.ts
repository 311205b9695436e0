import { geodesicTo } from '../../earth/geodesic.ts';
import type { LibraryStation } from '../../station/library/library-station.ts';
import { lineOfSightNm } from '../../station/line-of-sight.ts';
import type { PlacedLeg } from './route-leg.ts';

/** Frequencies nearer than this are the same channel, MHz. */
const SAME_MHZ = 0.001;
/** Two rows this near to each other are the same station, NM. */
const SAME_PLACE_NM = 1;

/**
 * Other stations on the frequency of a leg's station that may be heard at its start or end; nearest first.
 *
 * Counted to the horizon at the altitude, which is farther than any station is promised to be received: the wrong
 * one is heard all the better where the right one is weak.
 */
export function othersOnFrequency(
  { station, start, end }: PlacedLeg,
  altitudeFt: number,
  library: readonly LibraryStation[],
): readonly { readonly station: LibraryStation; readonly distanceNm: number }[] {
  const { frequencyMhz } = station;
  if (frequencyMhz === undefined) return [];
  return library
    .filter((other) => Math.abs(other.frequencyMhz - frequencyMhz) < SAME_MHZ)
    .filter((other) => geodesicTo(other, station).distanceNm > SAME_PLACE_NM)
    .map((other) => ({
      station: other,
      distanceNm: Math.min(geodesicTo(start, other).distanceNm, geodesicTo(end, other).distanceNm),
    }))
    .filter((other) => other.distanceNm < lineOfSightNm(altitudeFt, other.station.elevationFt))
    .toSorted((one, other) => one.distanceNm - other.distanceNm);
}
