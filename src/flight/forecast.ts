import type { Estimate } from '../track/estimate.ts';
import { withForecastChanged } from '../track/forecast-change.ts';
import type { Wind } from '../wind/wind.ts';
import type { PlanEvent } from './event.ts';

/** The wind forecast for a leg of the plan: its own, else that of the whole flight; undefined where none is known. */
export function forecastOf(plan: PlanEvent, legIndex: number): Wind | undefined {
  const own = plan.legWinds?.find((each) => each.legIndex === legIndex);
  return own?.wind ?? plan.forecastWind;
}

/**
 * What one leg leaves to another, for that leg's forecast. Where only the later leg has one and nothing was read
 * before, there is nothing to take over: null.
 */
export function carriedForLeg(
  plan: PlanEvent,
  carried: Estimate | null,
  legIndex: number,
  toLegIndex: number,
): Estimate | null {
  const from = forecastOf(plan, legIndex);
  const to = forecastOf(plan, toLegIndex);
  if (carried === null || to === undefined) return carried;
  if (from !== undefined) return withForecastChanged(carried, from, to);
  return carried.isPlaced ? carried : null;
}
