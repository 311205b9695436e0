import type { ServiceClass } from './service-volume.ts';
import type { Station } from '../station.ts';

/** An id longer than this many letters is no number of a row. */
export const LONGEST_ID = 64;

/** A station as it is kept in the pilot's library. */
export interface LibraryStation extends Station {
  /** Never an ident: those repeat. The number of the row that it came from, or one made for it here. */
  readonly id: string;
  readonly frequencyMhz: number;
  /** What it was built to serve, where that is known. */
  readonly serviceClass?: ServiceClass;
  /** Two letters, ISO 3166-1. */
  readonly country?: string;
  /** `model`: no declination was published, today's variation stands in for it and must be checked. */
  readonly declinationFrom: 'published' | 'model';
  /** False where no elevation was given and sea level stands in for it. */
  readonly isElevationKnown: boolean;
  /** Changed by hand: an import leaves it alone. */
  readonly isByHand: boolean;
}

/** The station alone, as a leg carries it. */
export function stationOf(kept: LibraryStation): Station {
  const { ident, latitudeDeg, longitudeDeg, elevationFt, declinationDegEast } = kept;
  const { hasDme, frequencyMhz, name, dme } = kept;
  return {
    ident,
    latitudeDeg,
    longitudeDeg,
    elevationFt,
    declinationDegEast,
    hasDme,
    frequencyMhz,
    ...(name === undefined ? {} : { name }),
    ...(dme === undefined ? {} : { dme }),
  };
}

/** From here to the pole a station may be aligned to true north, whatever the variation is. */
const FAR_NORTH_DEG = 70;

/**
 * What is doubtful about a kept station, each in one plain sentence; empty when there is nothing.
 *
 * *Source:* stations of the far north aligned to true north: common practice, no source.
 */
export function stationDoubts(kept: LibraryStation): readonly string[] {
  const isFarNorth = Math.abs(kept.latitudeDeg) >= FAR_NORTH_DEG;
  return [
    ...(isFarNorth && kept.declinationFrom === 'model'
      ? [`${kept.ident} stands near a pole: its radials may be aligned to true north.`]
      : []),
    ...(kept.declinationFrom === 'model'
      ? [`No declination is published for ${kept.ident}: today's variation stands in. Check it.`]
      : []),
    ...(kept.isElevationKnown ? [] : [`The elevation of ${kept.ident} is not known: taken as 0.`]),
  ];
}
