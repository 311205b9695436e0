import { checklistFor } from '../procedure/checklist.ts';
import type { CheckContext, CheckLine } from '../procedure/checklist.ts';
import { windFromSeen } from '../procedure/heading-on-course.ts';
import { ICAO_MANNER } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import { guide } from '../track/guide.ts';
import { forecastOf } from './forecast.ts';
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
  const { plan } = state;
  if (plan === null) return [];
  return checklistFor(plan.legs, legIndex, state.legs, {
    aircraft: plan.aircraft,
    dateIso: plan.dateIso,
    manner,
    ...windKnown(state, legIndex),
    ...(legIndex === state.legIndex ? headingsKnown(state) : {}),
  });
}

function windKnown({ plan, estimate }: FlightState, legIndex: number): Pick<CheckContext, 'wind'> {
  const seen = estimate === null ? null : guide(estimate, estimate.leg).seen.wind;
  if (estimate !== null && seen !== null) return { wind: windFromSeen(seen, estimate.leg) };
  const wind = plan === null ? undefined : forecastOf(plan, legIndex);
  return wind === undefined ? {} : { wind };
}

function headingsKnown({ estimate, advice }: FlightState): Partial<CheckContext> {
  const now = estimate?.headingDeg ?? null;
  return {
    ...(advice === null ? {} : { headingAdvisedDeg: advice.whichWay.headingDeg }),
    ...(now === null ? {} : { headingNowDeg: now }),
  };
}
