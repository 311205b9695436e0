import { DEG_PER_RAD, cosDeg, sinDeg, turnDeg } from '../base/angle.ts';
import { FT_PER_NM } from '../base/units.ts';
import { geodesicTo } from '../earth/geodesic.ts';
import type { Leg } from '../leg/leg.ts';
import { convergenceDegAt } from '../leg/local-norths.ts';
import type { AntennaSite, Station } from '../station/station.ts';
import type { Belief } from './belief.ts';
import { correct, varianceAlong } from './correct.ts';
import { placeOf } from './place.ts';
import type { Reading } from './reading.ts';
import type { DmeScene, Scene } from './scene.ts';
import { GATE_SURPRISE, VOR_BIAS_SD_DEG } from './tuning.ts';
import { dmeCorrection, updateDme } from './update-dme.ts';
import { isSaturated, needleNoiseDeg2 } from './update-needle.ts';

/** Nearer to the other station its bearing turns too fast to be of use. */
const LEAST_RANGE_NM = 1;

/** Radial of the other station, as the direction in the plane of our own; null where it tells nothing. */
function otherRadialDeg(scene: Scene, reading: Reading, convergenceDeg: number): number | null {
  const { flag, needleDots, courseSetDeg, station } = reading;
  if (!station || flag === 'off' || needleDots === undefined || isSaturated(needleDots, scene))
    return null;
  const off = needleDots * scene.degreesPerDot;
  const radialDeg = flag === 'from' ? courseSetDeg - off : courseSetDeg + 180 + off;
  return radialDeg + station.declinationDegEast + convergenceDeg;
}

/** The belief after a reading of another station, and whether any part of it was too far off to be used. */
export interface CrossBearingTaken {
  readonly belief: Belief;
  readonly isCrossOff: boolean;
}

/** Where the antennas of another station stand in the plane of the leg's own. */
interface OtherScene {
  readonly eastNm: number;
  readonly northNm: number;
  readonly convergenceDeg: number;
  /** Null where it has no DME. */
  readonly dme: DmeScene | null;
}

function placeInPlane(own: Station, antenna: AntennaSite): { eastNm: number; northNm: number } {
  const { distanceNm, azimuthDeg } = geodesicTo(own, antenna);
  return { eastNm: distanceNm * sinDeg(azimuthDeg), northNm: distanceNm * cosDeg(azimuthDeg) };
}

function otherScene(scene: Scene, leg: Leg, other: Station): OtherScene {
  const vor = placeInPlane(leg.station, other);
  const antenna = other.dme ?? other;
  const heightNm = (leg.altitudeFt - antenna.elevationFt) / FT_PER_NM;
  return {
    ...vor,
    convergenceDeg: convergenceDegAt(scene.norths, vor.eastNm, vor.northNm),
    dme: other.hasDme ? { ...placeInPlane(leg.station, antenna), heightNm } : null,
  };
}

/**
 * The belief after another station was read, on its own OBS setting: its radial, and its DME where it has one.
 *
 * Each part is left out where it is more than four standard deviations from the expected (`isCrossOff`); the radial
 * also by OFF, by a needle on its stop, and within 1 NM of that station. The bias of its radials is unknown, so they
 * count for 1.5 degrees at best.
 */
export function takeInCrossBearing(
  belief: Belief,
  scene: Scene,
  leg: Leg,
  reading: Reading,
): CrossBearingTaken {
  if (!reading.station) return { belief, isCrossOff: false };
  const other = otherScene(scene, leg, reading.station);
  const far = withOtherDme(belief, other, reading);
  const both = withOtherRadial(far.belief, scene, other, reading);
  return { belief: both.belief, isCrossOff: far.isCrossOff || both.isCrossOff };
}

function withOtherDme(belief: Belief, { dme }: OtherScene, { dmeNm }: Reading): CrossBearingTaken {
  if (!dme || dmeNm === undefined) return { belief, isCrossOff: false };
  const { surprise, variance } = dmeCorrection(belief, dme, dmeNm);
  if (surprise ** 2 > GATE_SURPRISE * variance) return { belief, isCrossOff: true };
  return { belief: updateDme(belief, dme, dmeNm), isCrossOff: false };
}

function withOtherRadial(
  belief: Belief,
  scene: Scene,
  other: OtherScene,
  reading: Reading,
): CrossBearingTaken {
  const radialDeg = otherRadialDeg(scene, reading, other.convergenceDeg);
  const { eastNm, northNm } = placeOf(belief.mean);
  const east = eastNm - other.eastNm;
  const north = northNm - other.northNm;
  const square = east * east + north * north;
  if (radialDeg === null || square < LEAST_RANGE_NM ** 2) return { belief, isCrossOff: false };
  const byEast = (north / square) * DEG_PER_RAD;
  const byNorth = (-east / square) * DEG_PER_RAD;
  const slope = [
    byEast * eastNm + byNorth * northNm,
    byEast * northNm - byNorth * eastNm,
    0,
    0,
    0,
    0,
    0,
  ];
  const surprise = turnDeg(Math.atan2(east, north) * DEG_PER_RAD, radialDeg);
  const variance = varianceAlong(belief, slope) + needleNoiseDeg2(scene) + VOR_BIAS_SD_DEG ** 2;
  if (surprise ** 2 > GATE_SURPRISE * variance) return { belief, isCrossOff: true };
  return {
    belief: correct(belief, { slope, surprise, variance, varianceLeft: 0 }),
    isCrossOff: false,
  };
}
