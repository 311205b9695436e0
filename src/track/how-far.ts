import { cosDeg, sinDeg } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import { wayToEnd } from './along-leg.ts';
import { alongLine, isWindTooStrong, lineSpeedKt } from './along-line.ts';
import type { AlongLine } from './along-line.ts';
import type { Belief } from './belief.ts';
import { varianceAlong } from './correct.ts';
import { lineDegTrue } from './deviation.ts';
import type { HowFar } from './guidance.ts';
import { lnRangeSd } from './place.ts';
import type { Scene } from './scene.ts';
import { WIND_WANDER_KT2_PER_S } from './tuning.ts';

/** A distance less certain than this part of the range is not told. Common practice, no source. */
export const GREATEST_RANGE_SD = 0.35;
/** Close to the station a distance this well known in NM is told all the same. */
const SMALL_RANGE_SD_NM = 1;
/** A groundspeed less certain than this is not told, nor a time that rests on it. */
export const GREATEST_SPEED_SD_KT = 11;
/** A time less certain than this part of itself (and 20 s) is not told. */
const GREATEST_TIME_SD = 0.3;
const SHORT_TIME_S = 20;
/** Measured over predicted spread of the time to go in simulation. */
const TIME_SD_INFLATION = 1.05;

/** Nothing is known of the distance. */
export const NOTHING_FAR: HowFar = {
  toGoNm: null,
  pastEndNm: null,
  toGoS: null,
  groundSpeedKt: null,
  sdNm: null,
  sdS: null,
  sdKt: null,
};

/** Derivative of the groundspeed along the line by the state. */
function speedSlope(motion: AlongLine, lineDeg: number): readonly number[] {
  const { trueAirspeedKt, windAcrossKt } = motion;
  const along = Math.sqrt(Math.max(1, trueAirspeedKt ** 2 - windAcrossKt ** 2));
  const byAcross = -windAcrossKt / along;
  const east = sinDeg(lineDeg) + byAcross * cosDeg(lineDeg);
  const north = cosDeg(lineDeg) - byAcross * sinDeg(lineDeg);
  return [0, 0, east, north, 0, trueAirspeedKt / along, 0];
}

/**
 * Distance, time and speed to the end of the leg, each with its standard deviation; null where the readings
 * do not show it.
 *
 * Distance over ground: to the station, or to the range at which the leg ends; past the end 0, and how far past.
 * Time: at the groundspeed along the line in the estimated wind; its spread takes in the wind still to come; none,
 * nor a speed, in a wind too strong for the line. `hasPassed`: nothing to go.
 */
export function howFar(belief: Belief, scene: Scene, hasPassed: boolean): HowFar {
  const motion = alongLine(belief.mean, scene);
  const slope = speedSlope(motion, lineDegTrue(belief.mean, scene));
  const speedKt = lineSpeedKt(motion);
  const sdKt = Math.sqrt(varianceAlong(belief, slope));
  const isSpeedKnown = sdKt <= GREATEST_SPEED_SD_KT && !isWindTooStrong(motion);
  const speed = isSpeedKnown
    ? { groundSpeedKt: speedKt, sdKt }
    : { groundSpeedKt: null, sdKt: null };
  const end = wayToEnd(motion, scene);
  const isKnown = isRangeKnown(belief);
  if (isOverStation(scene) && hasPassed) {
    const pastEndNm = isKnown ? Math.max(0, motion.pastStationNm) : null;
    return { ...NOTHING_FAR, ...speed, toGoNm: 0, toGoS: 0, pastEndNm };
  }
  if (end === null || !isKnown) return { ...NOTHING_FAR, ...speed };
  const toGoNm = Math.max(0, end.toEndNm);
  const distance = {
    toGoNm,
    pastEndNm: end.toEndNm < 0 ? -end.toEndNm : null,
    sdNm: Math.sqrt(varianceAlong(belief, end.slope)),
  };
  if (!isSpeedKnown) return { ...NOTHING_FAR, ...distance };
  const toGoS = (toGoNm * S_PER_H) / speedKt;
  const timeSlope = slope.map(
    (each, index) => ((end.slope[index] ?? 0) * S_PER_H - toGoS * each) / speedKt,
  );
  const sdS = timeSdS(varianceAlong(belief, timeSlope), toGoS, speedKt);
  const isTold = isTimeTold(sdS, toGoS);
  return { ...distance, ...speed, toGoS: isTold ? toGoS : null, sdS: isTold ? sdS : null };
}

/**
 * Standard deviation of a time to go, s: from its variance by what is believed now (s^2) and the wind that may
 * still come on the way.
 */
export function timeSdS(varianceNowS2: number, toGoS: number, speedKt: number): number {
  const windToCome = ((toGoS / speedKt) ** 2 * WIND_WANDER_KT2_PER_S * toGoS) / 3;
  return TIME_SD_INFLATION * Math.sqrt(varianceNowS2 + windToCome);
}

/** Whether a time to go is certain enough to be told. */
export function isTimeTold(sdS: number, toGoS: number): boolean {
  return sdS <= Math.max(SHORT_TIME_S, GREATEST_TIME_SD * toGoS);
}

function isOverStation({ isTo, endGroundNm }: Scene): boolean {
  return isTo && endGroundNm === 0;
}

/** Whether the range is known well enough for a distance to be told. */
export function isRangeKnown(belief: Belief): boolean {
  const sd = lnRangeSd(belief);
  return sd <= GREATEST_RANGE_SD || sd * Math.exp(belief.mean.lnRange) <= SMALL_RANGE_SD_NM;
}
