import type { JSX } from 'preact';
import { fitsCruisingLevel, nextCruisingLevels } from '../../src/leg/route/cruising-level.ts';
import { fuelNeeded, RESERVE_RULES } from '../../src/leg/route/fuel-reserve.ts';
import { readNumber } from '../../src/earth/typed-angle.ts';
import { magneticFromTrue } from '../../src/earth/norths.ts';
import { feet, minutesSeconds, oneDecimal } from '../parts/figures.ts';
import type { PlannedRoute } from './read-route.ts';
import type { RouteDraft } from './route-draft.ts';
import { solarDay, sunAt } from './sun.ts';

interface RouteTotalsProps {
  readonly draft: RouteDraft;
  readonly plan: PlannedRoute;
  readonly departsAtMs: number | null;
}

/** What the legs come to, and what the whole flight has to be watched for. */
export function RouteTotals({ draft, plan, departsAtMs }: RouteTotalsProps): JSX.Element {
  const { totals } = plan.computed;
  const perHour = draft.fuelPerHour.trim() === '' ? 0 : readNumber(draft.fuelPerHour);
  const fuel = fuelNeeded(totals.fuel, perHour, draft.reserve);
  const unit = draft.fuelUnit;
  return (
    <section aria-labelledby="totals-title">
      <h2 id="totals-title">In all</h2>
      <p>
        <b>
          {oneDecimal(totals.distanceNm)} NM, {minutesSeconds(totals.timeS)}
        </b>
        {plan.isWindGiven ? '' : ' in still air: no wind is given'}
        {perHour > 0 ? (
          <>
            {' '}
            · fuel {oneDecimal(fuel.trip)} {unit} and {oneDecimal(fuel.reserve)} {unit} in reserve:{' '}
            <b>
              {oneDecimal(fuel.total)} {unit}
            </b>{' '}
            <span class="soft">
              ({RESERVE_RULES[draft.reserve].minutes} min, {RESERVE_RULES[draft.reserve].source};
              taxi, climb and alternate are yours to add)
            </span>
          </>
        ) : null}
      </p>
      <ul class="warnings">
        {[...levelWords(draft, plan), ...altitudeWords(draft, plan)].map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <p>{sunWords(draft, plan, departsAtMs)}</p>
    </section>
  );
}

/** One sentence for the legs that go east, one for those that go west: each has levels of its own. */
function levelWords({ levels }: RouteDraft, { computed, altitudeFt }: PlannedRoute): string[] {
  const wrong = computed.legs.flatMap((leg, at) => {
    const magnetic = magneticFromTrue(leg.trackTrueDeg, leg.variationDegEast);
    return fitsCruisingLevel(levels, magnetic, altitudeFt) === false ? [{ at, magnetic }] : [];
  });
  const east = wrong.filter(({ magnetic }) => magnetic < 180);
  const west = wrong.filter(({ magnetic }) => magnetic >= 180);
  return [east, west].flatMap((legs) => {
    const [first] = legs;
    if (!first) return [];
    const fitting = nextCruisingLevels(levels, first.magnetic, altitudeFt).map(feet).join(' or ');
    const names = legs.map(({ at }) => at + 1).join(', ');
    return [
      `${feet(altitudeFt)} does not fit the semicircular rule on ${legs.length === 1 ? 'leg' : 'legs'} ${names}: ${fitting} would. Check your own regulation.`,
    ];
  });
}

function altitudeWords({ safeAltitude }: RouteDraft, { altitudeFt }: PlannedRoute): string[] {
  if (safeAltitude.trim() === '')
    return ['No lowest safe altitude is given. Work it out from a current chart.'];
  const safeFt = readNumber(safeAltitude);
  if (Number.isNaN(safeFt)) return ['The lowest safe altitude cannot be read: write it in feet.'];
  return altitudeFt < safeFt
    ? [`${feet(altitudeFt)} is below your lowest safe altitude of ${feet(safeFt)}.`]
    : [];
}

function sunWords(
  { date }: RouteDraft,
  { destination, computed }: PlannedRoute,
  departsAtMs: number | null,
): string {
  const arrivesMs = departsAtMs === null ? null : departsAtMs + computed.totals.timeS * 1000;
  const sun = sunAt(destination, arrivesMs === null ? date : solarDay(arrivesMs, destination));
  if (sun.isAlwaysUp) return 'The sun does not set at the destination that day.';
  if (sun.isAlwaysDown || sun.sunsetMs === null)
    return 'The sun does not rise at the destination that day.';
  const set = `Sunset at the destination ${utc(sun.sunsetMs)} UTC`;
  if (arrivesMs === null) return `${set}.`;
  const arrives = `you arrive at ${utc(arrivesMs)}`;
  if (sun.sunriseMs !== null && arrivesMs < sun.sunriseMs)
    return `${set}: ${arrives}, before sunrise at ${utc(sun.sunriseMs)}.`;
  const spare = Math.round((sun.sunsetMs - arrivesMs) / 60_000);
  return spare < 0
    ? `${set}: ${arrives}, ${-spare} min after it.`
    : `${set}: ${arrives}, ${spare} min before it.`;
}

function utc(atMs: number): string {
  return new Date(atMs).toISOString().slice(11, 16);
}
