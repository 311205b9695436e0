import { geodesicTo, type LatLon } from '../../earth/geodesic.ts';
import { slantFromGround } from '../../station/slant-range.ts';
import type { Station } from '../../station/station.ts';

/**
 * What a station's DME reads at a place and altitude, slant NM to its own antenna; null without one.
 *
 * `altitudeFt` above mean sea level. *Source:* as for `slantFromGround`.
 */
export function dmeNmAt(place: LatLon, station: Station, altitudeFt: number): number | null {
  if (!station.hasDme) return null;
  const antenna = station.dme ?? station;
  return slantFromGround(geodesicTo(place, antenna).distanceNm, altitudeFt - antenna.elevationFt);
}
