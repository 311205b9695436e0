import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { FieldProblem } from '../../src/base/result.ts';
import { proposeRoute, type RouteWish } from '../../src/leg/route/propose-route.ts';
import { findStations } from '../../src/station/library/find-stations.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { Field } from '../form/field.tsx';
import { library, stationIndex } from '../stations/library.ts';
import { StationRow } from '../stations/station-row.tsx';
import { feet } from '../parts/figures.ts';
import { addressOf } from '../parts/route.ts';
import { withStation } from './put-in.ts';
import type { RouteRead } from './read-route.ts';
import type { RouteDesk } from './route-desk.ts';
import { moved } from './route-draft.ts';

interface WayListProps {
  readonly desk: RouteDesk;
  readonly read: RouteRead;
}

/** The stations on the way: proposed, put in, moved and taken out. */
export function WayList({ desk, read }: WayListProps): JSX.Element {
  const [said, setSaid] = useState('');
  const { via } = desk.draft.value;
  const wish = wishOf(read);
  const isReady = wish !== null;
  const propose = (): void => {
    if (wish === null) return;
    const route = proposeRoute([...(library.peek()?.values() ?? [])], wish);
    if (route.ok) {
      desk.change({ via: route.value.stations });
      const { distanceNm, extraNm, fixes } = route.value;
      const told = fixes.flat().filter(({ crossing }) => crossing !== null).length;
      setSaid(
        `${distanceNm.toFixed(0)} NM, ${extraNm.toFixed(0)} more than straight. ` +
          (told === 0
            ? 'No second station crosses well.'
            : `Second stations tell the place at ${told} ${told === 1 ? 'point' : 'points'}.`),
      );
    } else {
      setSaid(refusalWords(route.problem, wish.altitudeFt));
    }
  };
  const way = useRef<HTMLOListElement>(null);
  const focusNext = useRef<FocusNext | null>(null);
  useEffect(() => {
    if (focusNext.current !== null) focusRow(way.current, focusNext.current);
    focusNext.current = null;
  }, [via]);
  const onChanged = (words: string, next: FocusNext): void => {
    setSaid(words);
    focusNext.current = next;
  };
  return (
    <section aria-labelledby="way-title">
      <h2 id="way-title">Stations on the way</h2>
      <ol class="found" ref={way}>
        {via.map((station, at) => (
          <OnTheWay
            key={`${station.id} ${at}`}
            desk={desk}
            station={station}
            at={at}
            onChanged={onChanged}
          />
        ))}
      </ol>
      <div class="row wrap no-print">
        <button type="button" class="main" disabled={!isReady} onClick={propose}>
          Propose the stations
        </button>
        {via.length < 2 ? null : (
          <button
            type="button"
            onClick={() => {
              desk.change({ via: via.toReversed() });
            }}
          >
            Turn the order round
          </button>
        )}
        <p class="soft" role="status">
          {isReady || via.length > 0 ? said : 'Give start, destination and altitude first.'}
        </p>
      </div>
      <p class="problem" role="alert">
        {read.problems.get('via') ?? ''}
      </p>
      <AddStation desk={desk} read={read} onSaid={setSaid} />
    </section>
  );
}

/** Where the keyboard goes on after the list has changed under it. */
interface FocusNext {
  readonly at: number;
  readonly does: 'earlier' | 'later' | 'out';
}

/** The same button in the row that it is about now; where that row has none to press, the nearest that can be. */
function focusRow(way: HTMLOListElement | null, { at, does }: FocusNext): void {
  const row = way?.children[Math.min(at, way.children.length - 1)];
  const wanted = row?.querySelector<HTMLElement>(`[data-does=${does}]:not(:disabled)`);
  const other = row?.querySelector<HTMLElement>('button:not(:disabled)');
  (wanted ?? other ?? document.getElementById(ADD_ID))?.focus();
}

/** Why there is no chain, in one sentence. */
function refusalWords(problems: readonly FieldProblem[], altitudeFt: number): string {
  const [problem] = problems;
  if (problem?.field === 'destination')
    return 'Start and destination are the same place. Type another destination.';
  const enoughFt = /\d+(?= ft)/.exec(problem?.expected ?? '')?.[0];
  if (problem?.field === 'altitudeFt' && enoughFt !== undefined)
    return `At ${feet(altitudeFt)} no chain of stations reaches all the way: it takes ${feet(Number(enoughFt))}.`;
  return library.peek()?.size === 0
    ? 'There are no stations on this device yet. Bring in a file of navaids first.'
    : 'No chain of stations reaches all the way, at this altitude or higher: none is near enough. Add a station by hand, or plan another way.';
}

/** Null until both ends and the altitude are there. */
function wishOf({ start, destination, altitudeFt }: RouteRead): RouteWish | null {
  if (!start?.place || !destination?.place || altitudeFt === null) return null;
  return { start: start.place, destination: destination.place, altitudeFt };
}

function OnTheWay({
  desk,
  station,
  at,
  onChanged,
}: {
  readonly desk: RouteDesk;
  readonly station: LibraryStation;
  readonly at: number;
  readonly onChanged: (words: string, next: FocusNext) => void;
}): JSX.Element {
  const { via } = desk.draft.value;
  const move = (by: -1 | 1): void => {
    const to = at + by;
    onChanged(`${station.ident} is now number ${to + 1} of ${via.length}.`, {
      at: to,
      does: by < 0 ? 'earlier' : 'later',
    });
    desk.change({ via: moved(via, at, by) });
  };
  return (
    <StationRow found={{ station, distanceNm: null }}>
      <div class="row no-print">
        <button
          type="button"
          data-does="earlier"
          disabled={at === 0}
          aria-label={`Earlier: ${station.ident}`}
          onClick={() => {
            move(-1);
          }}
        >
          Earlier
        </button>
        <button
          type="button"
          data-does="later"
          disabled={at === via.length - 1}
          aria-label={`Later: ${station.ident}`}
          onClick={() => {
            move(1);
          }}
        >
          Later
        </button>
        <button
          type="button"
          class="quiet"
          data-does="out"
          aria-label={`Take out: ${station.ident}`}
          onClick={() => {
            onChanged(`${station.ident} taken out.`, { at, does: 'out' });
            desk.change({ via: via.filter((_, index) => index !== at) });
          }}
        >
          Take out
        </button>
      </div>
    </StationRow>
  );
}

/** How many stations are offered for what was typed. */
const OFFERED = 6;

/** Where a station is typed in. */
const ADD_ID = 'field-add-station';

/** Puts a station in where it lengthens the way least. */
function AddStation({
  desk,
  read,
  onSaid,
}: WayListProps & { readonly onSaid: (words: string) => void }): JSX.Element {
  const [text, setText] = useState('');
  const near = read.start?.place ?? read.destination?.place ?? null;
  const isEmpty = library.value?.size === 0;
  const found =
    text.trim() === ''
      ? []
      : findStations(stationIndex.value, { text, limit: OFFERED, ...(near ? { near } : {}) });
  return (
    <div class="no-print add-station">
      <div class="fields">
        <Field
          name="add-station"
          label="Put a station in"
          value={text}
          onChange={setText}
          hint="Ident, name or frequency"
        />
      </div>
      {isEmpty ? (
        <p class="soft">
          No stations on this device yet.{' '}
          <a href={addressOf({ page: 'stations' })}>Bring in a file of navaids</a> or add one by
          hand.
        </p>
      ) : null}
      <ul class="found">
        {found.map((each) => (
          <StationRow key={each.station.id} found={each}>
            <button
              type="button"
              aria-label={`Put in: ${[each.station.ident, each.station.name ?? ''].join(' ').trim()}`}
              onClick={() => {
                const { via: before } = desk.draft.peek();
                const ends = [read.start?.place ?? null, read.destination?.place ?? null] as const;
                const via = withStation(before, each.station, ...ends);
                onSaid(putInWords(each.station, before, via));
                if (via !== before) desk.change({ via });
                setText('');
                document.getElementById(ADD_ID)?.focus();
              }}
            >
              Put in
            </button>
          </StationRow>
        ))}
      </ul>
    </div>
  );
}

function putInWords(
  { id, ident }: LibraryStation,
  before: readonly LibraryStation[],
  via: readonly LibraryStation[],
): string {
  const at = via.findIndex((each) => each.id === id) + 1;
  return via === before
    ? `${ident} is on the way already, number ${at}.`
    : `${ident} put in as number ${at} of ${via.length}.`;
}
