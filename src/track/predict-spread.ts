import type { AirPath } from './air-path.ts';
import type { Belief } from './belief.ts';
import { STATE_SIZE } from './belief.ts';
import { element, lowerRoot } from './matrix.ts';
import { meanOf, vectorOf } from './mean-vector.ts';
import { clampLnRange, moved } from './motion.ts';
import { processNoise } from './process-noise.ts';

/** Spread of the points and weight of the middle one (the usual alpha, beta; kappa is 0). */
const ALPHA = 0.7;
const BETA = 2;
const SCALE = ALPHA * ALPHA * STATE_SIZE;
const SIDE_WEIGHT = 1 / (2 * SCALE);
const MIDDLE_MEAN_WEIGHT = 1 - STATE_SIZE / SCALE;
const MIDDLE_SPREAD_WEIGHT = MIDDLE_MEAN_WEIGHT + 1 - ALPHA * ALPHA + BETA;

function spreadPoints(belief: Belief): number[][] {
  const root = lowerRoot(belief.covariance);
  const middle = vectorOf(belief.mean);
  const points = [middle];
  const step = Math.sqrt(SCALE);
  for (let column = 0; column < STATE_SIZE; column += 1) {
    for (const side of [step, -step]) {
      points.push(middle.map((each, row) => each + side * element(root, row, column)));
    }
  }
  return points;
}

/**
 * The belief after flying a path, through 15 points spread over it (unscented transform): for a range so
 * uncertain that the motion curves within it.
 *
 * *Source:* Julier, Uhlmann, Unscented filtering and nonlinear estimation, Proc. IEEE 92 (2004) 401-422.
 */
export function predictBySpread(belief: Belief, path: AirPath, trueAirspeedKt: number): Belief {
  const points = spreadPoints(belief).map((point) =>
    vectorOf(moved(meanOf(point), path, trueAirspeedKt)),
  );
  const mean = new Array<number>(STATE_SIZE).fill(0);
  points.forEach((point, index) => {
    const weight = index === 0 ? MIDDLE_MEAN_WEIGHT : SIDE_WEIGHT;
    for (let row = 0; row < STATE_SIZE; row += 1) {
      mean[row] = (mean[row] ?? 0) + weight * (point[row] ?? 0);
    }
  });
  mean[0] = clampLnRange(mean[0] ?? 0);
  const covariance = [...processNoise(meanOf(mean), path, trueAirspeedKt)];
  points.forEach((point, index) => {
    const weight = index === 0 ? MIDDLE_SPREAD_WEIGHT : SIDE_WEIGHT;
    addOuter(covariance, point, mean, weight);
  });
  return { mean: meanOf(mean), covariance };
}

function addOuter(
  covariance: number[],
  point: readonly number[],
  mean: readonly number[],
  weight: number,
): void {
  for (let row = 0; row < STATE_SIZE; row += 1) {
    const scaled = weight * ((point[row] ?? 0) - (mean[row] ?? 0));
    for (let column = 0; column < STATE_SIZE; column += 1) {
      const index = row * STATE_SIZE + column;
      covariance[index] =
        (covariance[index] ?? 0) + scaled * ((point[column] ?? 0) - (mean[column] ?? 0));
    }
  }
}
