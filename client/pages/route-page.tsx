import type { JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { ulid } from 'ulid';
import '../form.css';
import '../stations/stations.css';
import '../route/route.css';
import { legFixes } from '../../src/leg/route/leg-fixes.ts';
import { othersOnFrequency } from '../../src/leg/route/shared-frequency.ts';
import { chosenAircraft } from '../settings/settings.ts';
import { nowMs } from '../parts/clock.ts';
import { Field } from '../form/field.tsx';
import { Select } from '../form/select.tsx';
import { addressOf } from '../parts/route.ts';
import { todayIso } from '../parts/today.ts';
import { PlanView } from '../plan-view/plan-view.tsx';
import { LegOverview } from '../route/leg-overview.tsx';
import { LegSheet } from '../route/leg-sheet.tsx';
import { PaperHead } from '../route/paper-head.tsx';
import { readRoute, windKeysOf, type PlannedRoute } from '../route/read-route.ts';
import { RouteActions } from '../route/route-actions.tsx';
import { openDesk, type RouteDesk } from '../route/route-desk.ts';
import { emptyRoute, routeTitle, type RouteDraft } from '../route/route-draft.ts';
import { AirFields, EndFields } from '../route/route-fields.tsx';
import { dropRoute, keepRoute, keptRoutes } from '../route/route-shelf.ts';
import { RouteTotals } from '../route/route-totals.tsx';
import { WayList } from '../route/way-list.tsx';
import { loadLibrary, stationIndex } from '../stations/library.ts';

const newRoute = (): RouteDraft => emptyRoute(ulid(nowMs.peek()), todayIso(nowMs.peek()));

/** A whole flight on radials: its ends, the stations on the way, every leg, and what it comes to. */
export function RoutePage(): JSX.Element {
  const [desk, setDesk] = useState<RouteDesk>(() => openDesk(keptRoutes()[0] ?? newRoute()));
  const [problem, setProblem] = useState('');
  useEffect(() => {
    loadLibrary().catch((error: unknown) => {
      setProblem(error instanceof Error ? error.message : String(error));
    });
  }, []);
  const [gone, setGone] = useState<RouteDraft | null>(null);
  const open = (route: RouteDraft): void => {
    setGone(null);
    setDesk(openDesk(route));
  };
  const remove = (route: RouteDraft): void => {
    dropRoute(route.id);
    open(keptRoutes()[0] ?? newRoute());
    setGone(route);
  };
  useUndoKeys(desk);
  return (
    <main class="plain route">
      <p class="back">
        <a href={addressOf({ page: 'flights' })}>All flights</a>
      </p>
      <h1 tabIndex={-1}>Plan a flight</h1>
      {gone === null ? null : (
        <Gone
          route={gone}
          onBack={() => {
            keepRoute(gone);
            open(gone);
          }}
        />
      )}
      <Shelf desk={desk} onOpen={open} />
      <p class="problem" role="alert">
        {problem}
        {desk.problem.value}
      </p>
      <RouteSheet desk={desk} onOpen={open} onDelete={remove} />
    </main>
  );
}

/** Control or Command with Z goes back a step, with Shift forth again; in a field it stays the browser’s own. */
function useUndoKeys(desk: RouteDesk): void {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const isTyping = event.target instanceof HTMLInputElement;
      if (isTyping || event.key.toLowerCase() !== 'z' || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      if (event.shiftKey) desk.redo();
      else desk.undo();
    };
    addEventListener('keydown', press);
    return () => {
      removeEventListener('keydown', press);
    };
  }, [desk]);
}

/** A flight that was deleted, and the way back to it. */
function Gone({
  route,
  onBack,
}: {
  readonly route: RouteDraft;
  readonly onBack: () => void;
}): JSX.Element {
  const back = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    back.current?.focus();
  }, [route]);
  return (
    <p class="row wrap no-print" role="status">
      {routeTitle(route)} is deleted.
      <button ref={back} type="button" onClick={onBack}>
        Bring it back
      </button>
    </p>
  );
}

interface ShelfProps {
  readonly desk: RouteDesk;
  readonly onOpen: (route: RouteDraft) => void;
}

/** Which flight is on the desk, and the way back through its changes. */
function Shelf({ desk, onOpen }: ShelfProps): JSX.Element {
  const draft = desk.draft.value;
  const others = keptRoutes().filter(({ id }) => id !== draft.id);
  return (
    <div class="no-print">
      <div class="fields">
        <Field
          name="name"
          label="Name of the flight"
          value={draft.name}
          onChange={(name) => {
            desk.change({ name }, 'name');
          }}
          hint={`Kept on this device as ${routeTitle(draft)}`}
        />
        {others.length === 0 ? null : (
          <Select
            id="other-route"
            label="Another flight"
            value=""
            options={[
              { value: '', name: `${others.length} kept here` },
              ...others.map((each) => ({
                value: each.id,
                name: `${routeTitle(each)}, ${each.date}`,
              })),
            ]}
            onChange={(chosen) => {
              const other = others.find(({ id }) => id === chosen);
              if (other) onOpen(other);
            }}
          />
        )}
      </div>
      <div class="row wrap">
        <button type="button" disabled={!desk.canUndo.value} onClick={desk.undo}>
          Undo
        </button>
        <button type="button" disabled={!desk.canRedo.value} onClick={desk.redo}>
          Redo
        </button>
        <button
          type="button"
          class="quiet"
          onClick={() => {
            onOpen(newRoute());
          }}
        >
          New flight
        </button>
      </div>
    </div>
  );
}

function RouteSheet({
  desk,
  onOpen,
  onDelete,
}: ShelfProps & { readonly onDelete: (route: RouteDraft) => void }): JSX.Element {
  const draft = desk.draft.value;
  const aircraft = chosenAircraft.value;
  const index = stationIndex.value;
  const read = useMemo(() => readRoute(draft, aircraft, index), [draft, aircraft, index]);
  const { plan } = read;
  return (
    <>
      <section aria-labelledby="ends-title" class="no-print">
        <h2 id="ends-title">From and to</h2>
        <EndFields desk={desk} read={read} />
      </section>
      <section aria-labelledby="air-title" class="no-print">
        <h2 id="air-title">Air and fuel</h2>
        <p class="soft">
          {aircraft.name}, {aircraft.trueAirspeedKt} kt true.{' '}
          <a href={addressOf({ page: 'settings' })}>Change it in the settings</a>
        </p>
        <AirFields desk={desk} read={read} />
      </section>
      <WayList desk={desk} read={read} />
      {plan === null ? (
        <p class="soft">
          The legs appear here once both ends, the altitude and a station are there.
        </p>
      ) : (
        <Legs desk={desk} plan={plan} problems={read.problems} />
      )}
      <RouteActions
        desk={desk}
        plan={plan}
        onCopy={() => {
          onOpen({ ...draft, id: ulid(nowMs.peek()), name: `${routeTitle(draft)}, copy` });
        }}
        onDelete={() => {
          onDelete(draft);
        }}
      />
    </>
  );
}

interface LegsProps {
  readonly desk: RouteDesk;
  readonly plan: PlannedRoute;
  readonly problems: ReadonlyMap<string, string>;
}

function Legs({ desk, plan, problems }: LegsProps): JSX.Element {
  const draft = desk.draft.value;
  const library = stationIndex.value;
  const alike = useMemo(
    () => plan.legs.map((leg) => othersOnFrequency(leg, plan.altitudeFt, library.stations)),
    [plan, library],
  );
  const fixes = useMemo(() => legFixes(plan.legs, library, plan.altitudeFt), [plan, library]);
  const departsAtMs = departureMs(draft);
  const windKeys = windKeysOf(plan.legs);
  let timeS = 0;
  const begins = plan.computed.legs.map((leg) => {
    const at = timeS;
    timeS += leg.timeS;
    return departsAtMs === null ? null : departsAtMs + at * 1000;
  });
  return (
    <>
      <section aria-labelledby="legs-title">
        <h2 id="legs-title">Legs</h2>
        <PaperHead draft={draft} plan={plan} aircraft={chosenAircraft.value} />
        <PlanView plan={plan} fixes={fixes} />
        <LegOverview plan={plan} />
        {plan.legs.map((leg, index) => (
          <LegSheet
            key={index}
            plan={plan}
            index={index}
            beginsAtMs={begins[index] ?? null}
            fixes={fixes[index] ?? []}
            aircraft={chosenAircraft.value}
            fuelUnit={draft.fuelUnit}
            alike={alike[index] ?? []}
            windText={draft.legWinds[windKeys[index] ?? ''] ?? ''}
            windProblem={problems.get(`legWinds.${windKeys[index]}`) ?? ''}
            onWind={(text) => {
              const key = windKeys[index] ?? '';
              desk.change({ legWinds: { ...draft.legWinds, [key]: text } }, `wind ${key}`);
            }}
          />
        ))}
      </section>
      <RouteTotals draft={draft} plan={plan} departsAtMs={departsAtMs} />
      <p class="soft">
        Practice and planning aid, never the primary means of navigation. Check every figure against
        current charts and NOTAMs.
      </p>
    </>
  );
}

/** Take-off as a moment; null where it is not written as hours and minutes. */
function departureMs({ date, departure }: RouteDraft): number | null {
  const [, hours, minutes] = /^([01]?\d|2[0-3])[:. ]?([0-5]\d)$/.exec(departure.trim()) ?? [];
  if (hours === undefined || minutes === undefined) return null;
  const atMs = Date.parse(`${date}T${hours.padStart(2, '0')}:${minutes}:00Z`);
  return Number.isNaN(atMs) ? null : atMs;
}
