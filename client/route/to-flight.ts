import { accept, refuse, type Result } from '../../src/base/result.ts';
import { checkLeg } from '../../src/leg/check-leg.ts';
import type { Aircraft, Leg } from '../../src/leg/leg.ts';
import type { PlanFields } from '../store/flight-store.ts';
import type { PlannedRoute } from './read-route.ts';
import { routeTitle, type RouteDraft } from './route-draft.ts';

/** The plan of a flight as the Fly page takes it; refused in a sentence where a leg cannot be flown. */
export function flightOf(
  draft: RouteDraft,
  plan: PlannedRoute,
  { trueAirspeedKt, degreesPerDot, dotsFullScale }: Aircraft,
): Result<PlanFields, string> {
  const legs: Leg[] = [];
  for (const [index, { station, direction }] of plan.legs.entries()) {
    const computed = plan.computed.legs[index];
    if (!computed) continue;
    const { dmeAtEndNm, courseDeg } = computed;
    const ends = direction === 'to' ? 0 : dmeAtEndNm;
    const checked = checkLeg({
      station,
      direction,
      courseDeg,
      altitudeFt: plan.altitudeFt,
      // To a tenth, as a DME shows it.
      ...(ends === null ? {} : { endDmeNm: Math.round(10 * ends) / 10 }),
    });
    if (!checked.ok) {
      const [problem] = checked.problem;
      return refuse(`Leg ${index + 1}: expected ${problem?.expected ?? ''}.`);
    }
    legs.push(checked.value);
  }
  const legWinds = plan.legs.flatMap(({ wind }, legIndex) =>
    wind === undefined ? [] : [{ legIndex, wind }],
  );
  return accept({
    name: routeTitle(draft),
    dateIso: draft.date,
    aircraft: { trueAirspeedKt, degreesPerDot, dotsFullScale },
    legs,
    ...(plan.isWindGiven ? { forecastWind: plan.wind } : {}),
    ...(legWinds.length === 0 ? {} : { legWinds }),
  });
}
