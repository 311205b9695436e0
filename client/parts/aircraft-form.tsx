import type { JSX } from 'preact';
import type { FieldProblem } from '../../src/base/result.ts';
import { boundTo, type Problems } from '../form/bound.ts';
import { Choice } from '../form/choice.tsx';
import { useDraft } from '../form/draft.ts';
import { Field } from '../form/field.tsx';
import { KeptForm } from '../form/kept-form.tsx';
import { changeSettings, settings, type NamedAircraft } from '../settings/settings.ts';
import { draftOf, readAircraft, workedOutKt, type AircraftDraft } from './aircraft-draft.ts';

/** One aircraft, typed in or changed. `name`: of the one being changed; empty: a new one. */
export function AircraftForm({
  name,
  onDone,
}: {
  readonly name: string;
  readonly onDone: () => void;
}): JSX.Element {
  const { draft, put, problems, of, tell } = useDraft(() =>
    draftOf(settings.peek().aircraft.find((each) => each.name === name)),
  );
  const keep = (): void => {
    const read = readAircraft(draft);
    const wrong = [...nameProblem(draft.name.trim(), name), ...(read.ok ? [] : read.problem)];
    tell(wrong);
    if (!read.ok || wrong.length > 0) return;
    putAircraft(name, read.value);
    onDone();
  };
  return (
    <KeptForm onKeep={keep} onLeave={onDone} keepLabel="Keep" isInset>
      <div class="fields">
        <Field {...of('name')} name="aircraft.name" label="Name" />
        <Choice
          name="airspeed-by"
          label="True airspeed is"
          {...of('by')}
          words={{ true: 'typed in', calibrated: 'worked out' }}
        />
        <Airspeed draft={draft} put={put} problems={problems} />
        <Field
          {...of('perDot')}
          name="aircraft.degreesPerDot"
          label="One dot of the needle"
          unit="degrees"
          isNumber
        />
        <Field {...of('dots')} name="aircraft.dotsFullScale" label="Dots to full scale" isNumber />
      </div>
    </KeptForm>
  );
}

/** The true airspeed itself, or what it is worked out from and what comes out. */
function Airspeed({
  draft,
  put,
  problems,
}: {
  readonly draft: AircraftDraft;
  readonly put: (part: Partial<AircraftDraft>) => void;
  readonly problems: Problems;
}): JSX.Element {
  const of = boundTo(draft, put, problems);
  if (draft.by === 'true') {
    return (
      <Field
        {...of('speed')}
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
        {...of('calibrated')}
        name="aircraft.calibratedAirspeedKt"
        label="Calibrated airspeed"
        unit="kt"
        isNumber
        hint="Indicated, corrected by the handbook"
      />
      <Field
        {...of('pressureAltitude')}
        name="aircraft.pressureAltitudeFt"
        label="Pressure altitude"
        unit="ft"
        isNumber
        hint="Altimeter set to 1013.25 hPa"
      />
      <Field
        {...of('temperature')}
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

function nameProblem(name: string, before: string): readonly FieldProblem[] {
  const field = 'aircraft.name';
  if (name === '')
    return [{ field, expected: 'Give it a name, a type or its registration.', got: '' }];
  const isTaken = name !== before && settings.peek().aircraft.some((each) => each.name === name);
  return isTaken ? [{ field, expected: 'Another aircraft has this name.', got: '' }] : [];
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
