import type { JSX } from 'preact';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { Choice } from '../form/choice.tsx';
import { useDraft } from '../form/draft.ts';
import { Field } from '../form/field.tsx';
import { KeptForm } from '../form/kept-form.tsx';
import { Select } from '../form/select.tsx';
import { draftOfStation, readStation } from './station-draft.ts';

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
  const { draft, of, tell } = useDraft(() => draftOfStation(station));
  const keep = (): void => {
    const read = readStation(draft, id, station, year);
    tell(read.ok ? [] : read.problem);
    if (read.ok) onKeep(read.value);
  };
  return (
    <KeptForm onKeep={keep} onLeave={onLeave}>
      <div class="fields">
        <Field {...of('ident')} name="ident" label="Ident" hint="As on the chart: QEV" />
        <Field {...of('name')} name="name" label="Name" hint="If it has one" />
        <Field
          {...of('frequency')}
          name="frequencyMhz"
          label="Frequency"
          unit="MHz"
          isNumber
          hint="108.00 to 117.95"
        />
        <Field {...of('latitude')} name="latitudeDeg" label="Latitude" hint="46.5 N or 46 30.0 N" />
        <Field
          {...of('longitude')}
          name="longitudeDeg"
          label="Longitude"
          hint="21.25 W or 21 15.0 W"
        />
        <Field {...of('elevation')} name="elevationFt" label="Elevation" unit="ft" isNumber />
        <Field
          {...of('declination')}
          name="declinationDegEast"
          label="Station declination"
          hint="7 W or 2.5 E. Empty: today’s variation stands in"
        />
        <Choice name="station-dme" label="DME" {...of('dme')} words={{ yes: 'Yes', no: 'No' }} />
        <Select
          {...of('serviceClass')}
          id="station-class"
          label="Service class"
          options={CLASSES}
        />
      </div>
    </KeptForm>
  );
}
