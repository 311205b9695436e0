import { cosDeg, sinDeg } from '../base/angle.ts';
import type { Wind } from '../wind/wind.ts';
import { STATE_SIZE, WIND_EAST, WIND_NORTH } from './belief.ts';
import type { Estimate } from './estimate-record.ts';

/** How much of a change between two forecasts may not come true, as one standard deviation. Common practice, no source. */
const DOUBTFUL_PART = 0.5;

/**
 * What another leg takes over, where its forecast is another one: the wind moved by the difference of the forecasts.
 *
 * What the readings have shown beyond the first forecast is kept; half the difference is added to the spread. Equal
 * forecasts change nothing. Both winds in true degrees; the convergence between two legs is left out, a few tenths of a knot.
 */
export function withForecastChanged(carried: Estimate, from: Wind, to: Wind): Estimate {
  const eastKt = from.speedKt * sinDeg(from.fromDegTrue) - to.speedKt * sinDeg(to.fromDegTrue);
  const northKt = from.speedKt * cosDeg(from.fromDegTrue) - to.speedKt * cosDeg(to.fromDegTrue);
  const changeKt = Math.hypot(eastKt, northKt);
  if (changeKt === 0) return carried;
  const { mean, covariance } = carried.belief;
  const wider = [...covariance];
  for (const index of [WIND_EAST, WIND_NORTH]) {
    const at = index * STATE_SIZE + index;
    wider[at] = (wider[at] ?? 0) + (DOUBTFUL_PART * changeKt) ** 2;
  }
  const moved = {
    ...mean,
    windEastKt: mean.windEastKt + eastKt,
    windNorthKt: mean.windNorthKt + northKt,
  };
  return { ...carried, belief: { mean: moved, covariance: wider } };
}
