import { trueDeg } from '../../src/base/bearing.ts';
import { geodesicTo, placeAt, type LatLon } from '../../src/earth/geodesic.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { receptionNm } from '../../src/station/library/reception.ts';

/** A place in the open North Atlantic. */
export const ocean: LatLon = { latitudeDeg: 46.5, longitudeDeg: -28 };

/** An invented station. */
export function stationAt(ident: string, place: LatLon): LibraryStation {
  return {
    ...place,
    id: ident,
    ident,
    elevationFt: 0,
    declinationDegEast: -8,
    hasDme: true,
    frequencyMhz: 113.35,
    serviceClass: 'L',
    declinationFrom: 'published',
    isElevationKnown: true,
    isByHand: false,
  };
}

/** Stations strewn about the line eastwards from `ocean`, the same for the same seed. */
export function scattered(seed: number, count: number): readonly LibraryStation[] {
  let state = seed * 2_654_435_761;
  const chance = (): number => {
    state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 3_266_489_917) >>> 0;
    return state / 2 ** 32;
  };
  return Array.from({ length: count }, (_, at) => {
    const along = placeAt(ocean, trueDeg(90), 10 + 180 * chance());
    return stationAt(`R${at}`, placeAt(along, trueDeg(0), 60 * chance() - 30));
  });
}

/** The least cost over every order of every part of a small set, by trying them all; null: none fits. */
export function allChains(
  library: readonly LibraryStation[],
  start: LatLon,
  destination: LatLon,
  altitudeFt: number,
): number | null {
  const nm = (one: LatLon, other: LatLon): number => geodesicTo(one, other).distanceNm;
  const reach = (station: LibraryStation): number => receptionNm(station, altitudeFt);
  let best: number | null = null;
  const goOn = (last: LibraryStation, flown: number, left: readonly LibraryStation[]): void => {
    const rest = nm(last, destination);
    if (rest <= reach(last) && (best === null || flown + rest < best)) best = flown + rest;
    for (const next of left) {
      const hop = nm(last, next);
      if (hop > reach(last) + reach(next)) continue;
      goOn(
        next,
        flown + hop + 2,
        left.filter((each) => each !== next),
      );
    }
  };
  for (const first of library) {
    const hop = nm(start, first);
    if (hop > reach(first)) continue;
    goOn(
      first,
      hop + 2,
      library.filter((each) => each !== first),
    );
  }
  return best;
}
