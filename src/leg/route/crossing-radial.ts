import { sinDeg, turnDeg } from '../../base/angle.ts';
import type { StationDeg } from '../../base/bearing.ts';
import { geodesicTo, type LatLon } from '../../earth/geodesic.ts';
import { stationFromTrue } from '../../station/radial.ts';
import type { Station } from '../../station/station.ts';

/** A radial of a second station that crosses the leg at a place. */
export interface CrossingRadial<Second extends Station = Station> {
  readonly station: Second;
  readonly radialDeg: StationDeg;
  readonly distanceNm: number;
  /** How far along the leg the crossing can be off, one standard deviation, NM. */
  readonly alongSdNm: number;
}

/** Error of an indicated radial, ground and receiver together, degrees. Common practice, no source. */
const RADIAL_SD_DEG = 1.6;
/** Flatter crossings than this are not offered, degrees: 30 is the least in fix design (ICAO Doc 8168, from memory). */
const FLATTEST_DEG = 30;

/**
 * The radial of a second station at a place on a leg, with how far along the leg it can be off; null where it
 * crosses the leg too flatly (under 30 degrees) or the place is over the station.
 *
 * `trackDegTrue`: direction of the leg there. The spread is the station's distance times the error of a radial,
 * over the sine of the crossing angle.
 */
export function crossingRadial<Second extends Station>(
  place: LatLon,
  trackDegTrue: number,
  second: Second,
): CrossingRadial<Second> | null {
  const line = geodesicTo(second, place);
  const cutDeg = Math.abs(turnDeg(trackDegTrue, line.azimuthThereDeg));
  const angleDeg = Math.min(cutDeg, 180 - cutDeg);
  if (line.distanceNm < 0.5 || angleDeg < FLATTEST_DEG) return null;
  return {
    station: second,
    radialDeg: stationFromTrue(line.azimuthDeg, second),
    distanceNm: line.distanceNm,
    alongSdNm: (line.distanceNm * sinDeg(RADIAL_SD_DEG)) / sinDeg(angleDeg),
  };
}

/** The crossing radial that tells the place best, of all stations given; null where none does. */
export function bestCrossing<Second extends Station>(
  place: LatLon,
  trackDegTrue: number,
  seconds: readonly Second[],
): CrossingRadial<Second> | null {
  let best: CrossingRadial<Second> | null = null;
  for (const second of seconds) {
    const crossing = crossingRadial(place, trackDegTrue, second);
    if (crossing && (best === null || crossing.alongSdNm < best.alongSdNm)) best = crossing;
  }
  return best;
}
