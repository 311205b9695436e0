import type { JSX } from 'preact';
import type { LatLon } from '../../src/earth/geodesic.ts';
import { RESERVE_RULES, type ReserveName } from '../../src/leg/route/fuel-reserve.ts';
import type { Bound } from '../form/bound.ts';
import { Field } from '../form/field.tsx';
import { Select } from '../form/select.tsx';
import { lettered } from '../stations/station-draft.ts';
import type { RouteRead } from './read-route.ts';
import { choiceWords, type Resolved } from './resolve-fix.ts';
import type { RouteDesk } from './route-desk.ts';
import type { RouteDraft } from './route-draft.ts';

interface RouteFieldsProps {
  readonly desk: RouteDesk;
  readonly read: RouteRead;
}

type TextKey = Exclude<keyof RouteDraft, 'via' | 'legWinds' | 'reserve' | 'levels' | 'id'>;

/** Where from and where to. */
export function EndFields({ desk, read }: RouteFieldsProps): JSX.Element {
  const text = textOf(desk, read);
  return (
    <div class="fields">
      <End end="start" label="Start" resolved={read.start} {...{ desk, read, text }} />
      <End
        end="destination"
        label="Destination"
        resolved={read.destination}
        {...{ desk, read, text }}
      />
      <Field
        {...text('altitude')}
        name="altitude"
        label="Altitude"
        unit="ft"
        isNumber
        hint="Planned, above sea level"
      />
      <Field
        {...text('safeAltitude')}
        name="safeAltitude"
        label="Lowest safe altitude"
        unit="ft"
        isNumber
        hint="As you work it out from the chart"
      />
      <Field {...text('date')} name="date" label="Day of the flight" isDate />
      <Field
        {...text('departure')}
        name="departure"
        label="Take-off"
        unit="UTC"
        hint="14:30; empty: not known"
      />
    </div>
  );
}

/** The air and the fuel. */
export function AirFields({ desk, read }: RouteFieldsProps): JSX.Element {
  const text = textOf(desk, read);
  const { reserve, levels } = desk.draft.value;
  return (
    <div class="fields">
      <Field
        {...text('windFrom')}
        name="windFrom"
        label="Forecast wind from"
        unit="° true"
        isNumber
        hint="Empty: not known"
      />
      <Field {...text('windSpeed')} name="windSpeed" label="Wind speed" unit="kt" isNumber />
      <Field
        {...text('fuelPerHour')}
        name="fuelPerHour"
        label="Fuel for an hour"
        isNumber
        hint="Empty: not counted"
      />
      <Field {...text('fuelUnit')} name="fuelUnit" label="Fuel is counted in" hint="L, kg, gal" />
      <Select
        id="choose-reserve"
        label="Reserve"
        value={reserve}
        options={Object.entries(RESERVE_RULES).map(([value, rule]) => ({
          value: value as ReserveName,
          name: `${rule.minutes} min, ${rule.source}`,
        }))}
        onChange={(value) => {
          desk.change({ reserve: value });
        }}
        hint="Check your own regulation; more is always allowed"
      />
      <Select
        id="choose-levels"
        label="Cruising levels"
        value={levels}
        options={[
          { value: 'icao', name: 'By magnetic track (ICAO, EU)' },
          { value: 'us', name: 'By magnetic course (US)' },
          { value: 'none', name: 'Not checked' },
        ]}
        onChange={(value) => {
          desk.change({ levels: value });
        }}
        hint="Check your own regulation"
      />
    </div>
  );
}

type TextOf = (key: TextKey) => Bound<string>;

function textOf(desk: RouteDesk, read: RouteRead): TextOf {
  return (key) => ({
    value: desk.draft.value[key],
    problems: read.problems,
    onChange: (value) => {
      desk.change({ [key]: value }, key);
    },
  });
}

interface EndProps extends RouteFieldsProps {
  readonly end: 'start' | 'destination';
  readonly label: string;
  readonly resolved: Resolved | null;
  readonly text: TextOf;
}

/** One end as typed, what it was read as, and which station of that ident is meant. */
function End({ end, label, resolved, desk, read, text }: EndProps): JSX.Element {
  const other = end === 'start' ? read.destination : read.start;
  const near = other?.place ?? null;
  return (
    <div class="stack">
      <Field
        {...text(end)}
        name={end}
        label={label}
        hint={
          resolved?.place ? placeWords(resolved.place) : 'QEV 310 radial, 14 miles; 46.5 N 21.25 W'
        }
      />
      {resolved === null || resolved.choices.length === 0 ? null : (
        <Select
          id={`choose-${end}-which`}
          label="Which of them?"
          value={desk.draft.value[`${end}StationId`]}
          options={[
            { value: '', name: `${resolved.choices.length} stations have this ident` },
            ...resolved.choices.map((each) => ({ value: each.id, name: choiceWords(each, near) })),
          ]}
          onChange={(id) => {
            desk.change({ [`${end}StationId`]: id });
          }}
          hint="Look where it stands"
        />
      )}
    </div>
  );
}

/** A place in degrees and letters, to be compared with the chart. */
export function placeWords({ latitudeDeg, longitudeDeg }: LatLon): string {
  return `${lettered(latitudeDeg, 'N', 'S', 3)} ${lettered(longitudeDeg, 'E', 'W', 3)}`;
}
