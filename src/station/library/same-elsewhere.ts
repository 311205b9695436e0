import { geodesicTo } from '../../earth/geodesic.ts';
import type { FoundStation } from './find-stations.ts';
import type { LibraryStation } from './library-station.ts';

/** Two frequencies of stations that are nearer than this, MHz, are one. */
const SAME_WITHIN_MHZ = 0.001;

/** Other stations that could be taken for one. */
export interface SameElsewhere {
  readonly ident: readonly LibraryStation[];
  readonly frequency: readonly LibraryStation[];
}

/**
 * The other stations of a library with the ident, and those on the frequency, of one of them; one that shares both is
 * in both. In the order of the library: `nearestFirst` puts them in the other one.
 */
export function sameElsewhere(
  stations: readonly LibraryStation[],
  { id, ident, frequencyMhz }: LibraryStation,
): SameElsewhere {
  const others = stations.filter((each) => each.id !== id);
  return {
    ident: others.filter((each) => each.ident === ident),
    frequency: others.filter(
      (each) => Math.abs(each.frequencyMhz - frequencyMhz) < SAME_WITHIN_MHZ,
    ),
  };
}

/** Stations with their distance from one of them, NM along the geodesic, the nearest first. */
export function nearestFirst(
  stations: readonly LibraryStation[],
  from: LibraryStation,
): readonly (FoundStation & { readonly distanceNm: number })[] {
  return stations
    .map((station) => ({ station, distanceNm: geodesicTo(from, station).distanceNm }))
    .toSorted((one, other) => one.distanceNm - other.distanceNm);
}
