import { DEG_PER_RAD, cosDeg, sinDeg, turnDeg } from '../base/angle.ts';
import { geodesicTo } from '../earth/geodesic.ts';
import { convergenceDegAt } from '../leg/local-norths.ts';
import type { Station } from '../station/station.ts';
import type { Belief } from './belief.ts';
import { correct, varianceAlong } from './correct.ts';
import { placeOf } from './place.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { GATE_SURPRISE, VOR_BIAS_SD_DEG } from './tuning.ts';
import { isSaturated, needleNoiseDeg2 } from './update-needle.ts';

/** Nearer to the other station its bearing turns too fast to be of use. */
const LEAST_RANGE_NM = 1;

/** Radial of the other station, as the direction in the plane of our own; null where it tells nothing. */
function otherRadialDeg(scene: Scene, reading: Reading, other: Station, convergenceDeg: number) {
  const { flag, needleDots, courseSetDeg } = reading;
  if (flag === 'off' || needleDots === undefined || isSaturated(needleDots, scene)) return null;
  const off = needleDots * scene.degreesPerDot;
  const radialDeg = flag === 'from' ? courseSetDeg - off : courseSetDeg + 180 + off;
  return radialDeg + other.declinationDegEast + convergenceDeg;
}

/** The belief after a cross-bearing, and whether it was too far off to be used. */
export interface CrossBearingTaken {
  readonly belief: Belief;
  readonly isCrossOff: boolean;
}

/**
 * The belief after a cross-bearing: the radial of another station, read on its own OBS setting.
 *
 * Unchanged by OFF, by a needle on its stop, within 1 NM of the other station, and by a bearing more than four
 * standard deviations from the expected one. Its own bias is unknown, so it counts for 1.5 degrees at best.
 * A DME distance from another station is not used.
 */
export function takeInCrossBearing(
  belief: Belief,
  scene: Scene,
  own: Station,
  reading: Reading,
): CrossBearingTaken {
  const unused = { belief, isCrossOff: false };
  const other = reading.station;
  if (!other) return unused;
  const line = geodesicTo(own, other);
  const otherEast = line.distanceNm * sinDeg(line.azimuthDeg);
  const otherNorth = line.distanceNm * cosDeg(line.azimuthDeg);
  const convergence = convergenceDegAt(scene.norths, otherEast, otherNorth);
  const radialDeg = otherRadialDeg(scene, reading, other, convergence);
  const { eastNm, northNm } = placeOf(belief.mean);
  const east = eastNm - otherEast;
  const north = northNm - otherNorth;
  const square = east * east + north * north;
  if (radialDeg === null || square < LEAST_RANGE_NM ** 2) return unused;
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
