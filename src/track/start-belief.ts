import { RAD_PER_DEG } from '../base/angle.ts';
import { BEARING, LN_RANGE, STATE_SIZE, WIND_EAST, WIND_NORTH } from './belief.ts';
import type { Belief, StateMean } from './belief.ts';
import { diagonal, element } from './matrix.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { isSaturated } from './update-needle.ts';
import { clampLnRange } from './motion.ts';
import type { Wind } from '../wind/wind.ts';
import { cosDeg, sinDeg } from '../base/angle.ts';
import {
  AIRSPEED_ERROR_SD_KT,
  HEADING_ERROR_SD_DEG,
  UNKNOWN_RANGE_NM,
  UNKNOWN_RANGE_SD_LN,
  VOR_BIAS_SD_DEG,
  WIND_FORECAST_SD_KT,
  WIND_UNKNOWN_SD_KT,
  WIND_WANDER_KT2_PER_S,
} from './tuning.ts';

/** Spread of the range, as a factor, before the DME that starts the estimate is taken in. */
const RANGE_BEFORE_DME_SD_LN = 0.5;
/** Spread of the bearing before the needle that starts the estimate is taken in. */
const BEARING_BEFORE_NEEDLE_SD_DEG = 10;
/** A needle on its stop at the start: how far off the line aircraft are before one knows that. Common practice, no source. */
const OFF_LINE_SD_DEG = 15;
/** Only the flag is known: the half-plane about the course line. */
export const FLAG_ONLY_SD_DEG = 40;
/** Not even the flag. */
export const NO_BEARING_SD_DEG = 60;
/** Inside the cone any bearing is possible. */
export const IN_CONE_SD_DEG = 100;

/** What is believed of the air and the instruments before any reading; the place is not set yet. */
export function airBelief(wind: Wind | null): Belief {
  const windSd = wind ? WIND_FORECAST_SD_KT : WIND_UNKNOWN_SD_KT;
  return {
    mean: {
      lnRange: 0,
      bearingRad: 0,
      windEastKt: wind ? -wind.speedKt * sinDeg(wind.fromDegTrue) : 0,
      windNorthKt: wind ? -wind.speedKt * cosDeg(wind.fromDegTrue) : 0,
      vorBiasDeg: 0,
      airspeedErrorKt: 0,
      headingErrorDeg: 0,
    },
    covariance: diagonal([
      1,
      1,
      windSd ** 2,
      windSd ** 2,
      VOR_BIAS_SD_DEG ** 2,
      AIRSPEED_ERROR_SD_KT ** 2,
      HEADING_ERROR_SD_DEG ** 2,
    ]),
  };
}

/** The air after so long a time in which nobody looked, seconds: the wind has wandered on. */
export function agedAir({ mean, covariance }: Belief, durationS: number): Belief {
  const aged = [...covariance];
  for (const index of [WIND_EAST, WIND_NORTH]) {
    const at = index * STATE_SIZE + index;
    aged[at] = (aged[at] ?? 0) + WIND_WANDER_KT2_PER_S * durationS;
  }
  return { mean, covariance: aged };
}

/** A belief with a new place, independent of the air and the instruments, which stay. */
export function withPlace(
  air: Belief,
  place: Pick<StateMean, 'lnRange' | 'bearingRad'>,
  sd: { readonly lnRange: number; readonly bearingDeg: number },
): Belief {
  const covariance: number[] = [];
  for (let row = 0; row < STATE_SIZE; row += 1) {
    for (let column = 0; column < STATE_SIZE; column += 1) {
      const isPlace = row <= BEARING || column <= BEARING;
      covariance.push(isPlace ? 0 : element(air.covariance, row, column));
    }
  }
  covariance[LN_RANGE * STATE_SIZE + LN_RANGE] = sd.lnRange ** 2;
  covariance[BEARING * STATE_SIZE + BEARING] = (sd.bearingDeg * RAD_PER_DEG) ** 2;
  return { mean: { ...air.mean, ...place }, covariance };
}

/**
 * The belief about the place that a first reading allows, still broad: the reading itself is to be taken
 * in after it like any other.
 *
 * Range: about the DME, else about a typical distance. Bearing: about the radial shown; beyond the stop of
 * the needle on its side; or only the half-plane that the flag tells.
 */
export function placeFromReading(air: Belief, scene: Scene, reading: Reading): Belief {
  const { degTrue, sdDeg } = bearingStart(scene, reading, air.mean.vorBiasDeg);
  const range = rangeStart(scene, reading);
  return withPlace(
    air,
    { lnRange: clampLnRange(range.lnRange), bearingRad: degTrue * RAD_PER_DEG },
    { lnRange: range.sd, bearingDeg: sdDeg },
  );
}

function rangeStart(scene: Scene, reading: Reading): { lnRange: number; sd: number } {
  if (reading.dmeNm !== undefined && scene.dme) {
    const square = reading.dmeNm ** 2 - scene.dme.heightNm ** 2;
    const least = Math.max(0.3, 0.5 * scene.coneRadiusNm);
    return {
      lnRange: Math.log(Math.sqrt(Math.max(square, least ** 2))),
      sd: RANGE_BEFORE_DME_SD_LN,
    };
  }
  if (reading.flag === 'off' && scene.coneRadiusNm > 0) {
    return { lnRange: Math.log(0.6 * scene.coneRadiusNm), sd: UNKNOWN_RANGE_SD_LN };
  }
  return { lnRange: Math.log(UNKNOWN_RANGE_NM), sd: UNKNOWN_RANGE_SD_LN };
}

function bearingStart(
  scene: Scene,
  reading: Reading,
  vorBiasDeg: number,
): { degTrue: number; sdDeg: number } {
  const { flag, needleDots, courseSetDeg } = reading;
  if (flag === 'off') {
    const sdDeg = isInConeAtStart(scene, reading) ? IN_CONE_SD_DEG : NO_BEARING_SD_DEG;
    return { degTrue: scene.courseDegTrue + (scene.isTo ? 180 : 0), sdDeg };
  }
  const centreDeg = centredBearingDeg(scene, { flag, courseSetDeg }, vorBiasDeg);
  // To which side of it the needle points.
  const sense = flag === 'to' ? 1 : -1;
  if (needleDots === undefined) return { degTrue: centreDeg, sdDeg: FLAG_ONLY_SD_DEG };
  if (isSaturated(needleDots, scene)) return { degTrue: centreDeg, sdDeg: OFF_LINE_SD_DEG };
  return {
    degTrue: centreDeg + sense * needleDots * scene.degreesPerDot,
    sdDeg: BEARING_BEFORE_NEEDLE_SD_DEG,
  };
}

/** The bearing from the station, true, on which the needle is centred with this course and flag. */
export function centredBearingDeg(
  scene: Scene,
  { flag, courseSetDeg }: Pick<Reading, 'flag' | 'courseSetDeg'>,
  vorBiasDeg: number,
): number {
  return courseSetDeg + (flag === 'to' ? 180 : 0) + scene.declinationDegEast - vorBiasDeg;
}

/** Whether OFF in a first reading can be the cone: near enough by the DME, or no DME to tell. */
export function isInConeAtStart(scene: Scene, reading: Reading): boolean {
  if (reading.dmeNm === undefined || !scene.dme) return true;
  return reading.dmeNm <= Math.hypot(1.3 * scene.coneRadiusNm, scene.dme.heightNm);
}
