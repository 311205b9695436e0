import type { StationDeg } from '../base/bearing.ts';
import { geodesicTo, type LatLon } from '../earth/geodesic.ts';
import { coneRadiusNm } from '../station/cone.ts';
import { lineOfSightNm } from '../station/line-of-sight.ts';
import { stationFromTrue } from '../station/radial.ts';
import { slantFromGround } from '../station/slant-range.ts';
import type { Station } from '../station/station.ts';
import { flagOn, type FlagShown } from './flag.ts';
import { needleDotsOn, type NeedleScale } from './needle.ts';

/** A receiver tuned to a station, with a course set on its OBS. */
export interface Tuned {
  readonly station: Station;
  readonly courseSet: StationDeg;
  readonly scale: NeedleScale;
}

/** What the panel shows at one place. */
export interface Indication {
  /** Dots, negative left, clipped to full deflection; null with the flag off: the needle tells nothing. */
  readonly needleDots: number | null;
  readonly flag: FlagShown;
  /** Slant range to the DME's own antenna, NM; null without DME or beyond its line of sight. */
  readonly dmeNm: number | null;
}

/**
 * What needle, flag and DME show at a place and altitude (feet above mean sea level).
 *
 * An ideal receiver: no station error, no scalloping, no lag. Flag off within the cone over the station,
 * near the perpendicular to the set course, and beyond the line of sight. The heading does not matter.
 * *Source:* the parts that it is put together from.
 */
export function indicationAt(place: LatLon, altitudeFt: number, tuned: Tuned): Indication {
  const { station, courseSet, scale } = tuned;
  const fromStation = geodesicTo(station, place);
  const radial = stationFromTrue(fromStation.azimuthDeg, station);
  const isHeard =
    fromStation.distanceNm >= coneRadiusNm(altitudeFt - station.elevationFt) &&
    fromStation.distanceNm <= lineOfSightNm(altitudeFt, station.elevationFt);
  const flag = isHeard ? flagOn(radial, courseSet) : 'off';
  return {
    needleDots: flag === 'off' ? null : needleDotsOn(radial, courseSet, scale),
    flag,
    dmeNm: dmeAt(place, altitudeFt, station),
  };
}

/**
 * What the DME of a station shows at a place and altitude, slant NM to its own antenna.
 *
 * Null without DME or beyond the line of sight. There is no cone over a DME.
 */
export function dmeAt(place: LatLon, altitudeFt: number, station: Station): number | null {
  if (!station.hasDme) return null;
  const antenna = station.dme ?? station;
  const { distanceNm } = geodesicTo(antenna, place);
  if (distanceNm > lineOfSightNm(altitudeFt, antenna.elevationFt)) return null;
  return slantFromGround(distanceNm, altitudeFt - antenna.elevationFt);
}
