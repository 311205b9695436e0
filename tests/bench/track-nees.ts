import type { Truth } from './track-air.ts';
import type { Adviser } from './track-pilots.ts';

const PLACE_AND_WIND = [0, 1, 2, 3];

/** Solves a small symmetric system by elimination; rows carry the right side last. */
function solve(rows: number[][]): number[] {
  const size = rows.length;
  rows.forEach((pivot, k) => {
    for (const row of rows.slice(k + 1)) {
      const factor = (row[k] ?? 0) / (pivot[k] ?? 1);
      pivot.forEach((each, column) => {
        row[column] = (row[column] ?? 0) - factor * each;
      });
    }
  });
  const solution = new Array<number>(size).fill(0);
  for (let k = size - 1; k >= 0; k -= 1) {
    const row = rows[k] ?? [];
    const known = solution.reduce(
      (sum, each, column) => sum + each * (column > k ? (row[column] ?? 0) : 0),
      0,
    );
    solution[k] = ((row[size] ?? 0) - known) / (row[k] ?? 1);
  }
  return solution;
}

/** Squared error of place and wind in the filter's own spread: 4 on average where the spread is honest. */
export function neesOf(truth: Truth, adviser: Adviser): number | null {
  const estimate = adviser.estimate();
  if (!estimate?.isPlaced) return null;
  const { mean, covariance } = estimate.belief;
  const turn = mean.bearingRad - Math.atan2(truth.x, truth.y);
  const error = [
    mean.lnRange - Math.log(Math.hypot(truth.x, truth.y)),
    turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)),
    mean.windEastKt - truth.windX,
    mean.windNorthKt - truth.windY,
  ];
  const rows = PLACE_AND_WIND.map((row) => [
    ...PLACE_AND_WIND.map((column) => covariance[row * 7 + column] ?? 0),
    error[row] ?? 0,
  ]);
  return solve(rows).reduce((sum, each, index) => sum + each * (error[index] ?? 0), 0);
}
