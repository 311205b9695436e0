import { accept, refuse, type Result } from '../../base/result.ts';
import { rangeProblems } from '../../base/in-range.ts';
import { stationDeg, type StationDeg } from '../../base/bearing.ts';
import { placeAt, type LatLon } from '../../earth/geodesic.ts';
import { readPlace } from './typed-place.ts';
import { trueFromStation } from '../../station/radial.ts';
import { groundFromSlant } from '../../station/slant-range.ts';
import type { Station } from '../../station/station.ts';

/** What a pilot typed for a place: the place itself, or a radial and distance from a station yet to be found. */
export type TypedFix =
  | { readonly kind: 'place'; readonly place: LatLon }
  | {
      readonly kind: 'radial';
      readonly ident: string;
      readonly radialDeg: StationDeg;
      /** What the DME would read there, slant NM. */
      readonly dmeNm: number;
    }
  | { readonly kind: 'station'; readonly ident: string };

/** QEV 310 radial, 14 miles; QEV radial 310 distance 14.5; QEV 310/14; QEV310014 as in flight plans. */
const RADIAL =
  /^([A-Z][A-Z0-9]{0,3})[\s,]+(?:RADIAL\s+)?(\d{3})(?:\s*(?:RADIAL|DEGREES|DEG|°|R))?[\s,/]+(?:(?:AT|DISTANCE|DME)\s+)?(\d{1,3}(?:[.,]\d+)?)\s*(?:NM|MILES?|DME|D)?$/;
/** *Source:* ICAO Doc 4444, appendix 2, item 15: ident, three figures of bearing, three of distance. */
const RUN_TOGETHER = /^([A-Z]{2,3})(\d{3})(\d{3})$/;
const IDENT = /^[A-Z][A-Z0-9]{0,3}$/;

/**
 * Reads where a flight begins or ends as a pilot writes it: a place (`readPlace`), a radial and DME distance from a
 * station (QEV 310 radial, 14 miles), or the ident of a station alone.
 *
 * Refuses with what would have been accepted. An ident may stand for several stations: the caller finds them and
 * asks.
 */
export function readFix(text: string): Result<TypedFix, string> {
  const clean = text.trim().toUpperCase().replace(/\s+/g, ' ');
  if (clean === '')
    return refuse('Write a place, or a radial and distance: QEV 310 radial, 14 miles.');
  const [, ident, radial, distance] = RADIAL.exec(clean) ?? RUN_TOGETHER.exec(clean) ?? [];
  if (ident !== undefined) return radialFix(ident, Number(radial), distanceIn(distance));
  if (IDENT.test(clean)) return accept({ kind: 'station', ident: clean });
  const place = readPlace(text);
  if (place.ok) return accept({ kind: 'place', place: place.value });
  return refuse(
    /^[A-Z]{2,3}\b/.test(clean)
      ? 'A radial is written like QEV 310 radial, 14 miles.'
      : place.problem,
  );
}

function distanceIn(text: string | undefined): number {
  return Number((text ?? '').replace(',', '.'));
}

function radialFix(ident: string, radial: number, dmeNm: number): Result<TypedFix, string> {
  const wrong = [
    ...rangeProblems('radial', radial, { least: 0, most: 360, what: 'a radial in degrees' }),
    ...rangeProblems('distance', dmeNm, { least: 0.1, most: 250, what: 'a distance in NM' }),
  ][0];
  if (wrong) return refuse(`Expected ${wrong.expected}, got ${wrong.got}.`);
  return accept({ kind: 'radial', ident, radialDeg: stationDeg(radial), dmeNm });
}

/**
 * Where a radial and DME distance of a station lie, for an aircraft at `altitudeFt` above mean sea level.
 *
 * The DME is slant range; where the distance is less than the height, the place is overhead. A DME that stands
 * elsewhere is taken as if it stood with the VOR.
 * *Source:* as for `trueFromStation`, `groundFromSlant` and `placeAt`.
 */
export function placeOnRadial(
  station: Station,
  fix: { readonly radialDeg: StationDeg; readonly dmeNm: number },
  altitudeFt: number,
): LatLon {
  const groundNm = groundFromSlant(fix.dmeNm, Math.max(0, altitudeFt - station.elevationFt));
  return placeAt(station, trueFromStation(fix.radialDeg, station), groundNm);
}
