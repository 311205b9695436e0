import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { Choice, Field, focusFirstProblem } from '../parts/field.tsx';
import { problemTexts } from '../parts/plan-draft.ts';
import { draftOfStation, readStation, type StationDraft } from './station-draft.ts';

const CLASSES = [
  { value: '', name: 'Not known (taken as low, 40 NM)' },
  { value: 'T', name: 'T, terminal: 25 NM' },
  { value: 'L', name: 'L, low: 40 NM' },
  { value: 'H', name: 'H, high: 40 NM below 14,500 ft' },
  { value: 'VL', name: 'VL: 70 NM from 5,000 ft' },
  { value: 'VH', name: 'VH: 70 NM from 5,000 ft, more above' },
] as const;

interface StationFormProps {
  /** Null: a new one. */
  readonly station: LibraryStation | null;
  readonly id: string;
  readonly year: number;
  readonly onKeep: (station: LibraryStation) => void;
  readonly onLeave: () => void;
}

/** A station typed in from the chart, or corrected. */
export function StationForm(props: StationFormProps): JSX.Element {
  const { station, id, year, onKeep, onLeave } = props;
  const [draft, setDraft] = useState(() => draftOfStation(station));
  const [problems, setProblems] = useState<ReadonlyMap<string, string>>(new Map());
  const put = (part: Partial<StationDraft>): void => {
    setDraft((now) => ({ ...now, ...part }));
  };
  const text = (key: Exclude<keyof StationDraft, 'dme' | 'serviceClass'>) => ({
    value: draft[key],
    problems,
    onInput: (value: string) => {
      put({ [key]: value });
    },
  });
  const keep = (): void => {
    const read = readStation(draft, id, station, year);
    setProblems(read.ok ? new Map() : problemTexts(read.problem));
    if (read.ok) onKeep(read.value);
    else focusFirstProblem();
  };
  return (
    <form
      novalidate
      onSubmit={(submit) => {
        submit.preventDefault();
        keep();
      }}
    >
      <div class="fields">
        <Field {...text('ident')} name="ident" label="Ident" hint="As on the chart: QEV" />
        <Field {...text('name')} name="name" label="Name" hint="If it has one" />
        <Field
          {...text('frequency')}
          name="frequencyMhz"
          label="Frequency"
          unit="MHz"
          isNumber
          hint="108.00 to 117.95"
        />
        <Field
          {...text('latitude')}
          name="latitudeDeg"
          label="Latitude"
          hint="46.5 N or 46 30.0 N"
        />
        <Field
          {...text('longitude')}
          name="longitudeDeg"
          label="Longitude"
          hint="21.25 W or 21 15.0 W"
        />
        <Field {...text('elevation')} name="elevationFt" label="Elevation" unit="ft" isNumber />
        <Field
          {...text('declination')}
          name="declinationDegEast"
          label="Station declination"
          hint="7 W or 2.5 E. Empty: today’s variation stands in"
        />
        <Choice
          name="station-dme"
          label="DME"
          value={draft.dme}
          words={[
            { word: 'yes', name: 'Yes' },
            { word: 'no', name: 'No' },
          ]}
          onChoose={(dme) => {
            put({ dme });
          }}
        />
        <div class="field">
          <label for="station-class">Service class</label>
          <select
            id="station-class"
            value={draft.serviceClass}
            onChange={(change) => {
              put({ serviceClass: change.currentTarget.value as StationDraft['serviceClass'] });
            }}
          >
            {CLASSES.map(({ value, name }) => (
              <option key={value} value={value}>
                {name}
              </option>
            ))}
          </select>
        </div>
      </div>
      <div class="row">
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
        <button type="submit" class="main">
          Keep it
        </button>
      </div>
    </form>
  );
}
