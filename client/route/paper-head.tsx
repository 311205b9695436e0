import type { JSX } from 'preact';
import type { NamedAircraft } from '../settings/settings-record.ts';
import { feet } from '../parts/figures.ts';
import type { PlannedRoute } from './read-route.ts';
import { routeTitle, type RouteDraft } from './route-draft.ts';

interface PaperHeadProps {
  readonly draft: RouteDraft;
  readonly plan: PlannedRoute;
  readonly aircraft: NamedAircraft;
}

/** What the figures of a printed card hang on: on the page it stands in the fields, which are not printed. */
export function PaperHead({ draft, plan, aircraft }: PaperHeadProps): JSX.Element {
  const { windFrom, windSpeed, departure, safeAltitude, date } = draft;
  const wind = plan.isWindGiven
    ? `wind ${windFrom.trim().padStart(3, '0')}/${windSpeed.trim()} true`
    : 'no wind given';
  return (
    <div class="on-paper">
      <p>
        <b>{routeTitle(draft)}</b>
      </p>
      <p>
        {[
          `${date}${departure.trim() === '' ? '' : `, take-off ${departure.trim()} UTC`}`,
          feet(plan.altitudeFt),
          ...(safeAltitude.trim() === '' ? [] : [`lowest safe ${safeAltitude.trim()} ft`]),
          wind,
          `${aircraft.name}, ${aircraft.trueAirspeedKt} kt true`,
        ].join(' · ')}
      </p>
    </div>
  );
}
