import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { ulid } from 'ulid';
import '../form.css';
import '../stations/stations.css';
import { decimalYear } from '../../src/earth/calendar-date.ts';
import { findStations, type FoundStation } from '../../src/station/library/find-stations.ts';
import { stationDoubts, type LibraryStation } from '../../src/station/library/library-station.ts';
import { readPlace } from '../../src/leg/route/typed-place.ts';
import type { LatLon } from '../../src/earth/geodesic.ts';
import { nowMs } from '../parts/clock.ts';
import { Field } from '../form/field.tsx';
import { addressOf } from '../parts/route.ts';
import { Sheet } from '../parts/sheet.tsx';
import { todayIso } from '../parts/today.ts';
import { Elsewhere } from '../stations/same-elsewhere.tsx';
import { ImportBox } from '../stations/import-box.tsx';
import {
  library,
  loadLibrary,
  putStations,
  removeStation,
  stationIndex,
} from '../stations/library.ts';
import { StationForm } from '../stations/station-form.tsx';
import { StationRow } from '../stations/station-row.tsx';

/** So many are shown; more are found by writing more. */
const MOST_SHOWN = 40;

interface Undo {
  readonly what: string;
  readonly back: () => Promise<void>;
}

/** The stations of this device: brought in from a file, searched, added and put right by hand. */
export function StationsPage(): JSX.Element {
  const [editing, setEditing] = useState<LibraryStation | 'new' | null>(null);
  const [undo, setUndo] = useState<Undo | null>(null);
  const [problem, setProblem] = useState('');
  const fail = (error: unknown): void => {
    setProblem(error instanceof Error ? error.message : String(error));
  };
  useEffect(() => void loadLibrary().catch(fail), []);
  const read = decimalYear(todayIso(nowMs.peek()));
  const year = read.ok ? read.value : Number.NaN;
  const keep = (station: LibraryStation): void => {
    setEditing(null);
    putStations([station]).then((back) => {
      setUndo({ what: [`${station.ident} kept.`, ...stationDoubts(station)].join(' '), back });
    }, fail);
  };
  const remove = (station: LibraryStation): void => {
    removeStation(station).then((back) => {
      setUndo({ what: `${station.ident} taken out.`, back });
    }, fail);
  };
  return (
    <main class="plain stations">
      <p class="back">
        <a href={addressOf({ page: 'flights' })}>All flights</a>
      </p>
      <h1 tabIndex={-1}>Stations</h1>
      <p class="problem" role="alert">
        {problem}
      </p>
      <Finder
        onEdit={setEditing}
        onRemove={remove}
        undo={undo}
        onUndo={(each) => {
          setUndo(null);
          each.back().catch(fail);
        }}
      />
      <p>
        <button
          type="button"
          onClick={() => {
            setEditing('new');
          }}
        >
          Add a station by hand
        </button>
      </p>
      <ImportBox year={year} />
      {editing === null ? null : (
        <Sheet
          title={editing === 'new' ? 'A new station' : `Put ${editing.ident} right`}
          onClose={() => {
            setEditing(null);
          }}
        >
          <StationForm
            station={editing === 'new' ? null : editing}
            id={editing === 'new' ? ulid(nowMs.peek()) : editing.id}
            year={year}
            onKeep={keep}
            onLeave={() => {
              setEditing(null);
            }}
          />
        </Sheet>
      )}
    </main>
  );
}

interface FinderProps {
  readonly onEdit: (station: LibraryStation) => void;
  readonly onRemove: (station: LibraryStation) => void;
  readonly undo: Undo | null;
  readonly onUndo: (undo: Undo) => void;
}

function Finder({ onEdit, onRemove, undo, onUndo }: FinderProps): JSX.Element {
  const [text, setText] = useState('');
  const [near, setNear] = useState('');
  const place = near.trim() === '' ? null : readPlace(near);
  const problems = new Map(place?.ok === false ? [['near', place.problem]] : []);
  const count = library.value?.size ?? null;
  const found = foundFor(text, place?.ok === true ? place.value : null);
  return (
    <section aria-labelledby="find-title">
      <h2 id="find-title">Find one</h2>
      <div class="fields">
        <Field
          name="find"
          label="Ident, name or frequency"
          value={text}
          problems={problems}
          onChange={setText}
          hint={count === null ? 'Reading the stations' : `Of ${count.toLocaleString('en')} here`}
        />
        <Field
          name="near"
          label="Nearest to"
          value={near}
          problems={problems}
          onChange={setNear}
          hint="46.5 N 21.25 W; empty: anywhere"
        />
      </div>
      <UndoLine undo={undo} onUndo={onUndo} />
      <FoundWords count={found?.length ?? null} isEmpty={count === 0} />
      <ul class="found">
        {found?.map((each) => (
          <StationRow
            key={each.station.id}
            found={each}
            more={<Elsewhere station={each.station} stations={stationIndex.value.stations} />}
          >
            <div class="row">
              <button
                type="button"
                aria-label={`Put right: ${each.station.ident}`}
                onClick={() => {
                  onEdit(each.station);
                }}
              >
                Put right
              </button>
              <button
                type="button"
                class="quiet"
                aria-label={`Take out: ${each.station.ident}`}
                onClick={() => {
                  onRemove(each.station);
                }}
              >
                Take out
              </button>
            </div>
          </StationRow>
        ))}
      </ul>
    </section>
  );
}

/**
 * Null while nothing is asked for. Those with the very ident come first, also where others are nearer whose name
 * only contains it.
 */
function foundFor(text: string, near: LatLon | null): readonly FoundStation[] | null {
  const ident = text.trim().toUpperCase();
  if (ident === '' && near === null) return null;
  const found = findStations(stationIndex.value, { text, ...(near === null ? {} : { near }) });
  const isNamed = ({ station }: FoundStation): boolean => station.ident === ident;
  return [...found.filter(isNamed), ...found.filter((each) => !isNamed(each))].slice(0, MOST_SHOWN);
}

/** What has been done to the list; the focus goes where it can be taken back, once its own button is gone. */
function UndoLine({ undo, onUndo }: Pick<FinderProps, 'undo' | 'onUndo'>): JSX.Element {
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (undo !== null && document.activeElement === document.body) button.current?.focus();
  }, [undo]);
  return (
    <p role="status" class="row wrap">
      {undo?.what}
      {undo === null ? null : (
        <button
          ref={button}
          type="button"
          class="quiet"
          onClick={() => {
            onUndo(undo);
          }}
        >
          Undo
        </button>
      )}
    </p>
  );
}

/** `count`: null while nothing is asked for. */
function FoundWords({
  count,
  isEmpty,
}: {
  readonly count: number | null;
  readonly isEmpty: boolean;
}): JSX.Element {
  return (
    <p class="soft" role="status">
      {count === null ? askWords(isEmpty) : foundWords(count)}
    </p>
  );
}

function askWords(isEmpty: boolean): string {
  return isEmpty
    ? 'No stations yet. Bring in a file of navaids below, or add one by hand.'
    : 'An ident never names a station by itself: look where it stands.';
}

function foundWords(count: number): string {
  if (count === 0) return 'None. Write less of it, or bring in a file of navaids below.';
  return count >= MOST_SHOWN
    ? `The first ${MOST_SHOWN}; write more to see fewer.`
    : `${count} found.`;
}
