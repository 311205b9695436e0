import { RAD_PER_DEG } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import type { AirPath } from './air-path.ts';
import {
  AIRSPEED_ERROR,
  BEARING,
  HEADING_ERROR,
  LN_RANGE,
  STATE_SIZE,
  VOR_BIAS,
  WIND_EAST,
  WIND_NORTH,
} from './belief.ts';
import type { StateMean } from './belief.ts';
import type { Matrix } from './matrix.ts';
import { biasKept, turnedPath } from './motion.ts';
import { polarByPlane } from './motion-jacobian.ts';
import type { PolarByPlane } from './motion-jacobian.ts';
import {
  GUST_SD_KT,
  HEADING_ERROR_WANDER_DEG2_PER_S,
  HEADING_WANDER_SD_DEG,
  HEADING_WANDER_TIME_S,
  PLACE_NOISE_SD_NM,
  REACTION_SD_S,
  VOR_BIAS_SD_DEG,
  WIND_WANDER_KT2_PER_S,
} from './tuning.ts';

/** Variance of the mean heading over an interval in which it wanders (Ornstein-Uhlenbeck), deg^2. */
function meanWanderDeg2(durationS: number): number {
  const q = HEADING_WANDER_TIME_S / durationS;
  return HEADING_WANDER_SD_DEG ** 2 * 2 * q * (1 - q * (1 - Math.exp(-1 / q)));
}

/** What the motion adds to the uncertainty of the place, in the plane, NM^2. */
function placeNoise(
  mean: StateMean,
  path: AirPath,
  trueAirspeedKt: number,
): [number, number, number] {
  const air = turnedPath(path, mean.headingErrorDeg);
  const speed = trueAirspeedKt / S_PER_H;
  const across = speed * speed * RAD_PER_DEG * RAD_PER_DEG * meanWanderDeg2(path.durationS);
  const along = (GUST_SD_KT / S_PER_H) ** 2;
  const wind = (WIND_WANDER_KT2_PER_S * path.durationS ** 3) / 3 / S_PER_H ** 2;
  const late = (speed * REACTION_SD_S * path.turnChord) ** 2 / 2;
  const all = wind + late + PLACE_NOISE_SD_NM ** 2;
  return [
    across * air.northS ** 2 + along * air.eastS ** 2 + all,
    (along - across) * air.eastS * air.northS,
    across * air.eastS ** 2 + along * air.northS ** 2 + all,
  ];
}

/**
 * What one interval adds to the covariance: heading held by hand, gusts, late turns, a wind that wanders
 * (white acceleration), a VOR bias that forgets, a direction indicator that drifts.
 *
 * `after`: the state at the end of the interval, at whose place the plane is turned into range and bearing.
 */
export function processNoise(
  after: StateMean,
  path: AirPath,
  trueAirspeedKt: number,
  polar: PolarByPlane = polarByPlane(after),
): Matrix {
  const noise = new Array<number>(STATE_SIZE * STATE_SIZE).fill(0);
  const put = (row: number, column: number, value: number): void => {
    noise[row * STATE_SIZE + column] = value;
    noise[column * STATE_SIZE + row] = value;
  };
  const [ee, en, nn] = placeNoise(after, path, trueAirspeedKt);
  const { rangeByEast: re, rangeByNorth: rn, bearingByEast: be, bearingByNorth: bn } = polar;
  put(LN_RANGE, LN_RANGE, re * re * ee + 2 * re * rn * en + rn * rn * nn);
  put(LN_RANGE, BEARING, re * be * ee + (re * bn + rn * be) * en + rn * bn * nn);
  put(BEARING, BEARING, be * be * ee + 2 * be * bn * en + bn * bn * nn);
  const placeWind = (WIND_WANDER_KT2_PER_S * path.durationS ** 2) / 2 / S_PER_H;
  put(LN_RANGE, WIND_EAST, re * placeWind);
  put(LN_RANGE, WIND_NORTH, rn * placeWind);
  put(BEARING, WIND_EAST, be * placeWind);
  put(BEARING, WIND_NORTH, bn * placeWind);
  put(WIND_EAST, WIND_EAST, WIND_WANDER_KT2_PER_S * path.durationS);
  put(WIND_NORTH, WIND_NORTH, WIND_WANDER_KT2_PER_S * path.durationS);
  put(VOR_BIAS, VOR_BIAS, VOR_BIAS_SD_DEG ** 2 * (1 - biasKept(path.durationS) ** 2));
  put(AIRSPEED_ERROR, AIRSPEED_ERROR, 0);
  put(HEADING_ERROR, HEADING_ERROR, HEADING_ERROR_WANDER_DEG2_PER_S * path.durationS);
  return noise;
}
