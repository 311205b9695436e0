import type { AirPath } from './air-path.ts';
import type { Belief } from './belief.ts';
import { transformByMotion } from './matrix.ts';
import { moved } from './motion.ts';
import { motionJacobian } from './motion-jacobian.ts';
import { lnRangeSd } from './place.ts';
import { predictBySpread } from './predict-spread.ts';
import { processNoise } from './process-noise.ts';

/** Where the range is less certain than this (relative), the motion is too curved for a linearisation. */
const LINEAR_RANGE_SD = 0.2;

/**
 * The belief after flying a path through the air, linearised at its mean (extended Kalman filter).
 *
 * *Source:* Bar-Shalom, Li, Kirubarajan, Estimation with Applications to Tracking and Navigation, 2001,
 * section 10.3. Modified polar coordinates: Aidala, Hammel, IEEE Trans. Automatic Control 28 (1983) 283-294.
 */
export function predictLinearised(belief: Belief, path: AirPath, trueAirspeedKt: number): Belief {
  const mean = moved(belief.mean, path, trueAirspeedKt);
  const jacobian = motionJacobian(belief.mean, mean, path, trueAirspeedKt);
  const covariance = transformByMotion(jacobian, belief.covariance);
  const noise = processNoise(mean, path, trueAirspeedKt);
  for (let index = 0; index < covariance.length; index += 1) {
    covariance[index] = (covariance[index] ?? 0) + (noise[index] ?? 0);
  }
  return { mean, covariance };
}

/** The belief after flying a path: linearised where that is good enough, else by spread points. */
export function predict(belief: Belief, path: AirPath, trueAirspeedKt: number): Belief {
  if (path.durationS <= 0) return belief;
  return lnRangeSd(belief) > LINEAR_RANGE_SD
    ? predictBySpread(belief, path, trueAirspeedKt)
    : predictLinearised(belief, path, trueAirspeedKt);
}
