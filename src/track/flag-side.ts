import { RAD_PER_DEG, cosDeg, sinDeg } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import type { Belief } from './belief.ts';
import type { Interval } from './carry-on.ts';
import { carriedToSide } from './carry-to-side.ts';
import type { Side } from './carry-to-side.ts';
import { lineDegTrue, pastAbeamDeg } from './deviation.ts';
import type { Estimate } from './estimate-record.ts';
import { FITS } from './judge.ts';
import { likelihoodOf } from './likelihood.ts';
import { normalBelow } from './normal.ts';
import { isAlongCourse, isRangeKnown, speedAlongKt, withAlongForgotten } from './passage.ts';
import { bearingSdDeg, lnRangeSd } from './place.ts';
import { cutByRange, joined } from './range-pieces.ts';
import type { Piece } from './range-pieces.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { withPlace } from './start-belief.ts';
import { takeIn } from './take-in.ts';
import { CONE_EDGE_SD_LN } from './tuning.ts';
import { updateCone } from './update-cone.ts';

/** What counts for the range being quite another one than believed, and its spread then. Tuned by simulation. */
const MISTAKEN_WEIGHT = 0.02;
const MISTAKEN_SD_LN = 1;
const MISTAKEN_BEARING_SD_DEG = 30;
/** Nearer than this many standard deviations the station may be: then the flag tells something. */
const NEAR_SD = 3;
/** Pieces of less weight than this are left out. */
const LEAST_WEIGHT = 1e-9;

/** What is believed at a reading whose flag was known, before and after its needle and DME are taken in. */
export interface FlagTaken {
  readonly prior: Belief;
  readonly posterior: Belief;
}

/**
 * What a valid flag tells on a leg to a station whose distance is poorly known: TO, the station is still ahead; FROM
 * right after TO, it was passed in this interval; either, the aircraft is outside the cone. Null where that is no news.
 *
 * Near the station, a range that may lie on either side of it is no one belief in range and bearing. So the belief
 * is cut by range, each piece is carried on in the plane and weighed by the flag, the cone and the reading, and the
 * sum is one belief again. A small part of the weight is for a range, and a speed along the line learned from it,
 * that are quite wrong.
 */
export function withFlagTaken(
  before: Estimate,
  interval: Interval,
  reading: Reading,
): FlagTaken | null {
  const side = sideTold(before, reading);
  if (!side || interval.durationS <= 0 || !isStationNear(before, interval.durationS)) return null;
  const { belief, scene } = before;
  const path = interval.pathFrom(belief);
  const pieces = [
    ...cutByRange(belief, 1 - MISTAKEN_WEIGHT),
    ...cutByRange(ifMistaken(before), MISTAKEN_WEIGHT),
  ]
    .map((piece) => weighedByCone(carriedToSide(piece, path, scene.trueAirspeedKt, side), scene))
    .filter(({ weight }) => weight > LEAST_WEIGHT);
  const prior = joined(
    pieces.map(({ belief: each, weight }) => ({ belief: updateCone(each, scene, false), weight })),
  );
  const posterior = joined(pieces.map((piece) => afterReading(piece, scene, reading)));
  return prior && posterior && { prior, posterior };
}

/** The side of the station that the flag tells; null where it tells none, or one that needs no help. */
function sideTold(before: Estimate, reading: Reading): Side | null {
  const { scene, belief } = before;
  if (reading.flag === 'off' || !isFlagOfUse(before)) return null;
  const isReversed = isAlongCourse(scene, { courseSetDeg: reading.courseSetDeg + 180 });
  if (!isReversed && !isAlongCourse(scene, reading)) return null;
  const isPast = (reading.flag === 'from') !== isReversed;
  if (isPast && (isReversed || !isToJustSeen(before))) return null;
  const setDeg = lineDegTrue(belief.mean, scene) + reading.courseSetDeg - scene.courseDeg;
  const sign = reading.flag === 'from' ? 1 : -1;
  return { east: sign * sinDeg(setDeg), north: sign * cosDeg(setDeg) };
}

/** On a leg to a station that was not passed, with a place, and a range that is poorly known. */
function isFlagOfUse({ scene, belief, isPlaced, hasPassed, openBearing }: Estimate): boolean {
  return scene.isTo && isPlaced && !hasPassed && !openBearing && !isRangeKnown(belief, scene);
}

function isToJustSeen({ lastToAtMs, atMs }: Estimate): boolean {
  return lastToAtMs !== null && lastToAtMs === atMs;
}

function isStationNear({ belief, scene }: Estimate, durationS: number): boolean {
  const leastNm = Math.exp(belief.mean.lnRange - NEAR_SD * lnRangeSd(belief));
  return leastNm < (speedAlongKt(belief, scene) * durationS) / S_PER_H + scene.coneRadiusNm;
}

/** The belief if its range is wrong: wide, before the station, and without the speed that the range has taught. */
function ifMistaken({ belief, scene, start }: Estimate): Belief {
  const line = lineDegTrue(belief.mean, scene) * RAD_PER_DEG;
  const isBefore = pastAbeamDeg(belief.mean, scene, scene.courseDeg) < 0;
  const { lnRange, bearingRad } = belief.mean;
  return withPlace(
    withAlongForgotten(belief, start.belief, line),
    { lnRange, bearingRad: isBefore ? bearingRad : line + Math.PI },
    {
      lnRange: MISTAKEN_SD_LN,
      bearingDeg: isBefore ? bearingSdDeg(belief) : MISTAKEN_BEARING_SD_DEG,
    },
  );
}

/** A piece weighed by the flag being valid at all, which it is outside the cone. */
function weighedByCone({ belief, weight }: Piece, { coneRadiusNm }: Scene): Piece {
  if (coneRadiusNm <= 0) return { belief, weight };
  const sd = Math.hypot(lnRangeSd(belief), CONE_EDGE_SD_LN);
  const outNm = belief.mean.lnRange - Math.log(coneRadiusNm);
  return { belief, weight: weight * normalBelow(outNm / sd) };
}

/** A piece after a reading, weighed by how likely that was for it. */
function afterReading({ belief, weight }: Piece, scene: Scene, reading: Reading): Piece {
  const { lnNeedle, lnDme } = likelihoodOf(belief, scene, reading);
  return {
    belief: takeIn(belief, scene, reading, FITS),
    weight: weight * Math.exp(lnNeedle + lnDme),
  };
}
