import { RAD_PER_DEG, cosDeg, sinDeg } from '../base/angle.ts';
import { MS_PER_S, S_PER_H } from '../base/units.ts';
import { AIRSPEED_ERROR, STATE_SIZE, WIND_EAST, WIND_NORTH } from './belief.ts';
import type { Belief } from './belief.ts';
import { varianceAlong } from './correct.ts';
import { lineDegTrue } from './deviation.ts';
import { diagonal, lessOuter, transform } from './matrix.ts';
import { lnRangeSd } from './place.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { withPlace } from './start-belief.ts';

/** A range better known than this (relative) needs no help from the flag. */
const RANGE_KNOWN_SD = 0.15;
/** So many standard deviations nearer than believed the station may be. Tuned by simulation. */
const REACH_SD = 3;
const REACH_SD_WITHOUT_DME = 4;
/** Half a plane: an OBS setting within this of the course speaks of passing the station on the course. */
const ALONG_COURSE_DEG = 60;

/** Speed over the ground along the leg if its line is followed, knots; never below 30. */
export function speedAlongKt(belief: Belief, scene: Scene): number {
  const { mean } = belief;
  const line = lineDegTrue(mean, scene);
  const across = mean.windEastKt * cosDeg(line) - mean.windNorthKt * sinDeg(line);
  const along = mean.windEastKt * sinDeg(line) + mean.windNorthKt * cosDeg(line);
  const speed = scene.trueAirspeedKt + mean.airspeedErrorKt;
  return Math.max(30, Math.sqrt(Math.max(0, speed ** 2 - across ** 2)) + along);
}

/** Whether the OBS is set nearly to the course, so that its flag speaks of passing the station. */
export function isAlongCourse(scene: Scene, reading: Pick<Reading, 'courseSetDeg'>): boolean {
  return (
    Math.cos((reading.courseSetDeg - scene.courseDeg) * RAD_PER_DEG) >
    Math.cos(ALONG_COURSE_DEG * RAD_PER_DEG)
  );
}

/**
 * The belief put right by what the flag tells about passing the station, on a leg to it, where the range is
 * poorly known; null where the flag adds nothing or speaks of something else.
 *
 * First FROM after TO, with OFF between them: somewhere between half a minute and the whole interval past the
 * station, on the course (without OFF between them: see flag-side.ts). `lastToAtMs`: when TO was last seen.
 * `start`: what was believed when the leg began.
 */
export function afterPassage(
  belief: Belief,
  scene: Scene,
  reading: Reading,
  lastToAtMs: number | null,
  start: Belief,
): Belief | null {
  if (!scene.isTo || lastToAtMs === null || isRangeKnown(belief, scene)) return null;
  if (!isAlongCourse(scene, reading)) return null;
  const sinceToS = (reading.atMs - lastToAtMs) / MS_PER_S;
  const flownNm = (speedAlongKt(belief, scene) * sinceToS) / S_PER_H;
  const line = lineDegTrue(belief.mean, scene) * RAD_PER_DEG;
  if (reading.flag === 'from' && isWithinReach(belief, scene, flownNm)) {
    return withPlace(
      withAlongForgotten(belief, start, line),
      { lnRange: Math.log(Math.max(0.3, flownNm / 2)), bearingRad: line },
      { lnRange: 0.5, bearingDeg: 30 },
    );
  }
  return null;
}

/**
 * The belief with what it holds of the speed along the line (wind and airspeed) put back to what was known at the
 * start of the leg: it was learned from the distance that has just proved wrong. The wind across the line, which the
 * needle has shown, stays.
 */
export function withAlongForgotten(belief: Belief, start: Belief, lineRad: number): Belief {
  const east = Math.sin(lineRad);
  const north = Math.cos(lineRad);
  const across = belief.mean.windEastKt * north - belief.mean.windNorthKt * east;
  const along = start.mean.windEastKt * east + start.mean.windNorthKt * north;
  const keep = [...diagonal([1, 1, north * north, east * east, 1, 0, 1])];
  keep[WIND_EAST * STATE_SIZE + WIND_NORTH] = -east * north;
  keep[WIND_NORTH * STATE_SIZE + WIND_EAST] = -east * north;
  const covariance = transform(keep, belief.covariance);
  const alongSlope = [0, 0, east, north, 0, 0, 0];
  const speedAt = AIRSPEED_ERROR * STATE_SIZE + AIRSPEED_ERROR;
  covariance[speedAt] = start.covariance[speedAt] ?? 0;
  return {
    mean: {
      ...belief.mean,
      windEastKt: across * north + along * east,
      windNorthKt: along * north - across * east,
      airspeedErrorKt: start.mean.airspeedErrorKt,
    },
    covariance: lessOuter(covariance, alongSlope, -varianceAlong(start, alongSlope)),
  };
}

/** Without DME a range that seems known has come from the cone alone, and is not. */
export function isRangeKnown(belief: Belief, { dme }: Scene): boolean {
  return dme !== null && lnRangeSd(belief) <= RANGE_KNOWN_SD;
}

/**
 * Whether the station can have been reached since TO was last seen. Where no DME speaks against it a FROM is believed
 * more readily: to hold on to TO beyond the station is the worse mistake.
 */
function isWithinReach(belief: Belief, scene: Scene, flownNm: number): boolean {
  const sds = scene.dme ? REACH_SD : REACH_SD_WITHOUT_DME;
  const leastNm = Math.exp(belief.mean.lnRange - sds * lnRangeSd(belief));
  return leastNm < flownNm + scene.coneRadiusNm + 1;
}
