import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { changeSettings, settings, type NamedAircraft } from '../settings/settings.ts';
import { draftOf, readAircraft, workedOutKt, type AircraftDraft } from './aircraft-draft.ts';
import { Choice, Field, focusFirstProblem } from './field.tsx';
import { problemTexts } from './plan-draft.ts';

type TextOf = (key: Exclude<keyof AircraftDraft, 'by'>) => {
  readonly value: string;
  readonly problems: ReadonlyMap<string, string>;
  readonly onInput: (value: string) => void;
};

/** One aircraft, typed in or changed. `name`: of the one being changed; empty: a new one. */
export function AircraftForm({
  name,
  onDone,
}: {
  readonly name: string;
  readonly onDone: () => void;
}): JSX.Element {
  const [draft, setDraft] = useState(() =>
    draftOf(settings.peek().aircraft.find((each) => each.name === name)),
  );
  const [problems, setProblems] = useState<ReadonlyMap<string, string>>(new Map());
  const put = (part: Partial<AircraftDraft>): void => {
    setDraft((now) => ({ ...now, ...part }));
  };
  const text: TextOf = (key) => ({
    value: draft[key],
    problems,
    onInput: (value) => {
      put({ [key]: value });
    },
  });
  const keep = (): void => {
    const wrong = new Map(nameProblem(draft.name.trim(), name));
    const read = readAircraft(draft);
    if (!read.ok) for (const [field, words] of problemTexts(read.problem)) wrong.set(field, words);
    setProblems(wrong);
    if (!read.ok || wrong.size > 0) {
      focusFirstProblem();
      return;
    }
    putAircraft(name, read.value);
    onDone();
  };
  return (
    <form
      class="inset"
      novalidate
      onSubmit={(submit) => {
        submit.preventDefault();
        keep();
      }}
    >
      <div class="fields">
        <Field {...text('name')} name="aircraft.name" label="Name" />
        <Choice
          name="airspeed-by"
          label="True airspeed is"
          value={draft.by}
          words={[
            { word: 'true', name: 'typed in' },
            { word: 'calibrated', name: 'worked out' },
          ]}
          onChoose={(by) => {
            put({ by });
          }}
        />
        <Airspeed draft={draft} text={text} />
        <Field
          {...text('perDot')}
          name="aircraft.degreesPerDot"
          label="One dot of the needle"
          unit="degrees"
          isNumber
        />
        <Field
          {...text('dots')}
          name="aircraft.dotsFullScale"
          label="Dots to full scale"
          isNumber
        />
      </div>
      <div class="row">
        <button type="button" onClick={onDone}>
          Leave it
        </button>
        <button type="submit" class="main">
          Keep
        </button>
      </div>
    </form>
  );
}

/** The true airspeed itself, or what it is worked out from and what comes out. */
function Airspeed({
  draft,
  text,
}: {
  readonly draft: AircraftDraft;
  readonly text: TextOf;
}): JSX.Element {
  if (draft.by === 'true') {
    return (
      <Field
        {...text('speed')}
        name="aircraft.trueAirspeedKt"
        label="True airspeed"
        unit="kt"
        isNumber
      />
    );
  }
  const workedOut = workedOutKt(draft);
  return (
    <>
      <Field
        {...text('calibrated')}
        name="aircraft.calibratedAirspeedKt"
        label="Calibrated airspeed"
        unit="kt"
        isNumber
        hint="Indicated, corrected by the handbook"
      />
      <Field
        {...text('pressureAltitude')}
        name="aircraft.pressureAltitudeFt"
        label="Pressure altitude"
        unit="ft"
        isNumber
        hint="Altimeter set to 1013.25 hPa"
      />
      <Field
        {...text('temperature')}
        name="aircraft.temperatureC"
        label="Outside temperature"
        unit="°C"
        isNumber
        hint="Empty: standard"
      />
      <p class="field" role="status">
        <b>True airspeed</b>
        <span>
          {workedOut.ok ? `${workedOut.value} kt` : 'not yet: the fields beside are needed'}
        </span>
      </p>
    </>
  );
}

function nameProblem(name: string, before: string): readonly (readonly [string, string])[] {
  if (name === '') return [['aircraft.name', 'Give it a name, a type or its registration.']];
  const isTaken = name !== before && settings.peek().aircraft.some((each) => each.name === name);
  return isTaken ? [['aircraft.name', 'Another aircraft has this name.']] : [];
}

function putAircraft(before: string, next: NamedAircraft): void {
  const { aircraft, chosenAircraft: chosen } = settings.peek();
  const isNew = !aircraft.some((each) => each.name === before);
  changeSettings({
    aircraft: isNew
      ? [...aircraft, next]
      : aircraft.map((each) => (each.name === before ? next : each)),
    chosenAircraft: isNew || chosen === before ? next.name : chosen,
  });
}
