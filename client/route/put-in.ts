import { geodesicTo, type LatLon } from '../../src/earth/geodesic.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';

/** The way with one more station, put in where it lengthens the flight least; a station on it already stays once. */
export function withStation(
  via: readonly LibraryStation[],
  station: LibraryStation,
  start: LatLon | null,
  destination: LatLon | null,
): readonly LibraryStation[] {
  if (via.some(({ id }) => id === station.id)) return via;
  let best = via;
  let leastNm = Infinity;
  for (let at = 0; at <= via.length; at += 1) {
    const tried = [...via.slice(0, at), station, ...via.slice(at)];
    const nm = lengthNm([
      ...(start ? [start] : []),
      ...tried,
      ...(destination ? [destination] : []),
    ]);
    if (nm < leastNm) {
      leastNm = nm;
      best = tried;
    }
  }
  return best;
}

function lengthNm(places: readonly LatLon[]): number {
  return places
    .slice(1)
    .reduce((sum, place, at) => sum + geodesicTo(places[at] ?? place, place).distanceNm, 0);
}
