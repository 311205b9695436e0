import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { proposeRoute, type RouteWish } from '../../src/leg/route/propose-route.ts';
import { findStations } from '../../src/station/library/find-stations.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { Field } from '../form/field.tsx';
import { library, stationIndex } from '../stations/library.ts';
import { StationRow } from '../stations/station-row.tsx';
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
      const [problem] = route.problem;
      setSaid(`Expected ${problem?.expected ?? ''}. Now: ${problem?.got ?? ''}.`);
    }
  };
  return (
    <section aria-labelledby="way-title">
      <h2 id="way-title">Stations on the way</h2>
      <ol class="found">
        {via.map((station, at) => (
          <OnTheWay key={`${station.id} ${at}`} desk={desk} station={station} at={at} />
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
      <AddStation desk={desk} read={read} />
    </section>
  );
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
}: {
  readonly desk: RouteDesk;
  readonly station: LibraryStation;
  readonly at: number;
}): JSX.Element {
  const { via } = desk.draft.value;
  const move = (by: -1 | 1): void => {
    desk.change({ via: moved(via, at, by) });
  };
  return (
    <StationRow found={{ station, distanceNm: null }}>
      <div class="row no-print">
        <button
          type="button"
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
          aria-label={`Take out: ${station.ident}`}
          onClick={() => {
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

/** Puts a station in where it lengthens the way least. */
function AddStation({ desk, read }: WayListProps): JSX.Element {
  const [text, setText] = useState('');
  const near = read.start?.place ?? read.destination?.place ?? null;
  const isEmpty = library.value?.size === 0;
  const found =
    text.trim() === ''
      ? []
      : findStations(stationIndex.value, { text, limit: OFFERED, ...(near ? { near } : {}) });
  return (
    <div class="no-print">
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
              aria-label={`Put in: ${each.station.ident}`}
              onClick={() => {
                const { via } = desk.draft.peek();
                desk.change({
                  via: withStation(
                    via,
                    each.station,
                    read.start?.place ?? null,
                    read.destination?.place ?? null,
                  ),
                });
                setText('');
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
