import { cosDeg, sinDeg, wrap180 } from '../base/angle.ts';
import { stationDeg, trueDeg, type TrueDeg } from '../base/bearing.ts';
import { accept, refuse, type Result } from '../base/result.ts';
import { geodesicTo, placeAt } from '../earth/geodesic.ts';
import { variationDegEast } from '../earth/variation.ts';
import { trueFromStation } from '../station/radial.ts';
import { groundFromSlant } from '../station/slant-range.ts';
import type { Station } from '../station/station.ts';
import type { Leg } from './leg.ts';
import type { LocalNorths } from './local-norths.ts';

/** The antenna of the leg's DME, in the frame of the station. */
interface DmeAntenna {
  readonly eastNm: number;
  readonly northNm: number;
  /** Aircraft above it; negative when it stands higher. */
  readonly heightFt: number;
}

/**
 * A leg on its day, with everything that does not change on the way worked out once.
 *
 * The frame is a plane about the station, east and north (NM) by true north at the station, azimuthal
 * equidistant: distance and direction from the station are exact.
 */
export interface DatedLeg extends LocalNorths {
  readonly leg: Leg;
  readonly dateIso: string;
  /** The course to fly, true at the station. */
  readonly courseDegTrue: TrueDeg;
  /** Aircraft above the antenna of the VOR. */
  readonly heightAboveVorFt: number;
  /** Null on a leg without DME. */
  readonly dmeAntenna: DmeAntenna | null;
  /**
   * Ground distance from the station to the end of the leg on the line of its course; 0 over it, null: no end is
   * known there. An arc does not end on that line.
   */
  readonly endGroundNm: number | null;
}

/**
 * Works out a leg for its day.
 *
 * Takes a leg that `checkLeg` has accepted. Refuses what `variationDegEast` refuses (field `dateIso`) and an
 * end that the DME never shows on this leg (field `leg.endDmeNm`).
 */
export function datedLeg(leg: Leg, dateIso: string): Result<DatedLeg> {
  const norths = localNorths(leg, dateIso);
  if (!norths.ok) return norths;
  const { station } = leg;
  const courseDegTrue = trueFromStation(stationDeg(leg.courseDeg), station);
  const heightAboveVorFt = leg.altitudeFt - station.elevationFt;
  const dmeAntenna = station.hasDme ? dmeAntennaOf(station, leg.altitudeFt) : null;
  const endGroundNm = legEndGroundNm(leg, courseDegTrue, dmeAntenna);
  if (endGroundNm === 'never-shown') return refuse([endNeverShown(leg)]);
  return accept({
    ...norths.value,
    leg,
    dateIso,
    courseDegTrue,
    heightAboveVorFt,
    dmeAntenna,
    endGroundNm,
  });
}

const GRADIENT_STEP_NM = 60;

/** Variation at the station, and its slope from the model at 60 NM to each side. */
function localNorths({ station, altitudeFt }: Leg, dateIso: string): Result<LocalNorths> {
  const [here, north, east, south, west] = [
    station,
    ...[0, 90, 180, 270].map((each) => placeAt(station, trueDeg(each), GRADIENT_STEP_NM)),
  ].map((place) => variationDegEast(place, dateIso, altitudeFt));
  if (!here?.ok) return here ?? refuse([]);
  const slope = (ahead?: Result<number>, behind?: Result<number>): number =>
    ahead?.ok && behind?.ok ? wrap180(ahead.value - behind.value) / (2 * GRADIENT_STEP_NM) : 0;
  return accept({
    stationLatitudeDeg: station.latitudeDeg,
    variationDegEast: here.value,
    variationDegPerNmEast: slope(east, west),
    variationDegPerNmNorth: slope(north, south),
  });
}

function dmeAntennaOf(station: Station, altitudeFt: number): DmeAntenna {
  const antenna = station.dme ?? station;
  const { distanceNm, azimuthDeg } = geodesicTo(station, antenna);
  return {
    eastNm: distanceNm * sinDeg(azimuthDeg),
    northNm: distanceNm * cosDeg(azimuthDeg),
    heightFt: altitudeFt - antenna.elevationFt,
  };
}

/**
 * Where on the radial the DME shows the end. With the DME's antenna beside the radial, of two such places
 * the one farther from the station: inbound it comes first, outbound it is the one still to come.
 */
function legEndGroundNm(
  leg: Leg,
  courseDegTrue: TrueDeg,
  dmeAntenna: DmeAntenna | null,
): number | null | 'never-shown' {
  const { endDmeNm, direction } = leg;
  if (leg.arc) return null;
  if (direction === 'to' && (endDmeNm ?? 0) === 0) return 0;
  if (endDmeNm === undefined) return null;
  if (!dmeAntenna) return groundFromSlant(endDmeNm, leg.altitudeFt - leg.station.elevationFt);
  const radialDegTrue = direction === 'to' ? courseDegTrue + 180 : courseDegTrue;
  const eastward = sinDeg(radialDegTrue);
  const northward = cosDeg(radialDegTrue);
  const alongNm = dmeAntenna.eastNm * eastward + dmeAntenna.northNm * northward;
  const besideNm = dmeAntenna.eastNm * northward - dmeAntenna.northNm * eastward;
  const groundNm = groundFromSlant(endDmeNm, dmeAntenna.heightFt);
  const endNm = alongNm + Math.sqrt(groundNm ** 2 - besideNm ** 2);
  return endNm >= 0 ? endNm : 'never-shown';
}

function endNeverShown(leg: Leg) {
  return {
    field: 'leg.endDmeNm',
    expected: 'a distance that the DME shows somewhere on this radial',
    got: String(leg.endDmeNm),
  };
}
