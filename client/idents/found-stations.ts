import { geodesicTo, type LatLon } from '../../src/earth/geodesic.ts';
import { agreementOf, type Agreement } from '../../src/ident/look-up.ts';
import { fitOf, type Press } from '../../src/ident/rhythm.ts';
import type { Station } from '../../src/station/station.ts';

/** A station that it could be. */
export interface FoundStation {
  readonly station: Station;
  readonly agreement: Agreement;
  readonly distanceNm: number;
}

/** A rhythm twenty times less likely than its best reading may still be meant. */
const LEAST_NATS = -3;

const RANK: Readonly<Record<Agreement, number>> = { whole: 0, 'gaps-elsewhere': 1, begins: 2 };

/** The stations whose ident agrees with what was typed, whole idents first, then the nearest first. */
export function foundByPatterns(
  stations: readonly Station[],
  patterns: readonly string[],
  from: LatLon,
): readonly FoundStation[] {
  return found(stations, from, ({ ident }) => agreementOf(patterns, ident));
}

/** The stations whose ident fits a rhythm, whole idents first, then the nearest first. */
export function foundByRhythm(
  stations: readonly Station[],
  presses: readonly Press[],
  from: LatLon,
): readonly FoundStation[] {
  return found(stations, from, ({ ident }) => {
    const fit = fitOf(presses, ident);
    if (fit === null || fit.nats < LEAST_NATS) return null;
    return fit.isWhole ? 'whole' : 'begins';
  });
}

function found(
  stations: readonly Station[],
  from: LatLon,
  agreement: (station: Station) => Agreement | null,
): readonly FoundStation[] {
  return stations
    .flatMap((station) => {
      const agrees = agreement(station);
      if (agrees === null) return [];
      return { station, agreement: agrees, distanceNm: geodesicTo(from, station).distanceNm };
    })
    .toSorted(
      (one, other) =>
        RANK[one.agreement] - RANK[other.agreement] || one.distanceNm - other.distanceNm,
    );
}
