import { checklistFor } from '../procedure/checklist.ts';
import type { CheckLine } from '../procedure/checklist.ts';
import { windFromSeen } from '../procedure/heading-on-course.ts';
import { ICAO_MANNER } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import { guide } from '../track/guide.ts';
import type { FlightState } from './state.ts';

/**
 * The checklist of one leg of a flight, by default the one being flown, with the wind as the readings have
 * shown it, or else the forecast. No lines before there is a plan.
 */
export function checklistNow(
  state: FlightState,
  manner: Manner = ICAO_MANNER,
  legIndex: number = state.legIndex,
): readonly CheckLine[] {
  const { plan, estimate } = state;
  if (plan === null) return [];
  const seen = estimate === null ? null : guide(estimate, estimate.leg).seen.wind;
  const wind =
    estimate === null || seen === null ? plan.forecastWind : windFromSeen(seen, estimate.leg);
  const headingNowDeg = legIndex === state.legIndex ? estimate?.headingDeg : null;
  return checklistFor(plan.legs, legIndex, state.legs, {
    aircraft: plan.aircraft,
    dateIso: plan.dateIso,
    manner,
    ...(wind === undefined ? {} : { wind }),
    ...(headingNowDeg == null ? {} : { headingNowDeg }),
  });
}
