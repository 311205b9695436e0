import { cosDeg, sinDeg, turnDeg } from '../../base/angle.ts';
import type { StationDeg } from '../../base/bearing.ts';
import { geodesicTo, type LatLon } from '../../earth/geodesic.ts';
import { coneRadiusNm } from '../../station/cone.ts';
import { stationFromTrue } from '../../station/radial.ts';
import type { Station } from '../../station/station.ts';

/** A place on a leg that a second radial is to tell. */
export interface PlaceOnLeg {
  readonly place: LatLon;
  /** Direction of the leg there. */
  readonly trackDegTrue: number;
  /** Ground distance to the leg's own station, whose radial is the other line of the fix. */
  readonly rangeNm: number;
  /** Above mean sea level. */
  readonly altitudeFt: number;
}

/** A radial of a second station that crosses the leg at a place. */
export interface CrossingRadial<Second extends Station = Station> {
  readonly station: Second;
  /** By the second station's own declination. */
  readonly radialDeg: StationDeg;
  readonly distanceNm: number;
  /** Between the radial and the track, degrees, up to 90. */
  readonly angleDeg: number;
  /** How far along the leg the fix can be off, one standard deviation, NM. */
  readonly alongSdNm: number;
}

/** Error of an indicated radial, ground and receiver together, degrees. Common practice, no source. */
const RADIAL_SD_DEG = 1.6;
/** Flatter crossings than this are not offered, degrees: 30 is the least in fix design (ICAO Doc 8168, from memory). */
const FLATTEST_DEG = 30;
/** From here to the perpendicular a crossing is square enough to be taken first, degrees. Common practice, no source. */
const SQUARE_DEG = 60;

/**
 * The radial of a second station at a place on a leg, with how far along the leg the fix can be off; null where it
 * crosses the leg too flatly (under 30 degrees) or the place lies in the second station's blind cone.
 *
 * Both radials are wrong by 1.6 degrees, one standard deviation: the second one by its distance over the sine of the
 * crossing angle, the leg's own one, which puts the aircraft beside the line, by its distance over the tangent.
 * *Source:* plane geometry of two lines that cross.
 */
export function crossingRadial<Second extends Station>(
  at: PlaceOnLeg,
  second: Second,
): CrossingRadial<Second> | null {
  const line = geodesicTo(second, at.place);
  const cutDeg = Math.abs(turnDeg(at.trackDegTrue, line.azimuthThereDeg));
  const angleDeg = Math.min(cutDeg, 180 - cutDeg);
  const blindNm = coneRadiusNm(at.altitudeFt - second.elevationFt);
  if (line.distanceNm <= blindNm || angleDeg < FLATTEST_DEG) return null;
  const acrossNm = at.rangeNm * sinDeg(RADIAL_SD_DEG) * cosDeg(angleDeg);
  const secondNm = line.distanceNm * sinDeg(RADIAL_SD_DEG);
  return {
    station: second,
    radialDeg: stationFromTrue(line.azimuthDeg, second),
    distanceNm: line.distanceNm,
    angleDeg,
    alongSdNm: Math.hypot(secondNm, acrossNm) / sinDeg(angleDeg),
  };
}

/** Whether a crossing lies between 60 and 120 degrees. */
export function isSquare({ angleDeg }: Pick<CrossingRadial, 'angleDeg'>): boolean {
  return angleDeg >= SQUARE_DEG;
}

/**
 * The crossing radial that tells the place best, of all stations given; null where none does. One that crosses at
 * 60 to 120 degrees comes before every flatter one.
 */
export function bestCrossing<Second extends Station>(
  at: PlaceOnLeg,
  seconds: readonly Second[],
): CrossingRadial<Second> | null {
  let best: CrossingRadial<Second> | null = null;
  for (const second of seconds) {
    const crossing = crossingRadial(at, second);
    if (crossing && (best === null || isBetter(crossing, best))) best = crossing;
  }
  return best;
}

function isBetter(one: CrossingRadial, other: CrossingRadial): boolean {
  return isSquare(one) === isSquare(other) ? one.alongSdNm < other.alongSdNm : isSquare(one);
}
