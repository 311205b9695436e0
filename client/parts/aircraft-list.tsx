import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { checkAircraft } from '../../src/leg/check-aircraft.ts';
import {
  changeSettings,
  chosenAircraft,
  settings,
  type NamedAircraft,
} from '../settings/settings.ts';
import { Field, focusFirstProblem } from './field.tsx';
import { problemTexts } from './plan-draft.ts';
import { readNumber } from './typed-angle.ts';

/** The pilot's aircraft: which one new flights start with, and their airspeeds and scales. */
export function AircraftList(): JSX.Element {
  /** Name of the one being changed; empty: a new one; null: none. */
  const [editing, setEditing] = useState<string | null>(null);
  const { aircraft } = settings.value;
  const chosen = chosenAircraft.value.name;
  const remove = (name: string): void => {
    const left = aircraft.filter((each) => each.name !== name);
    changeSettings({
      aircraft: left,
      chosenAircraft: chosen === name ? (left[0]?.name ?? '') : chosen,
    });
  };
  return (
    <div class="stack">
      <ul class="hangar">
        {aircraft.map((each) => (
          <li key={each.name}>
            <label class="check">
              <input
                type="radio"
                name="chosen-aircraft"
                checked={each.name === chosen}
                onChange={() => {
                  changeSettings({ chosenAircraft: each.name });
                }}
              />
              <span>
                <b>{each.name}</b>{' '}
                <span class="soft">
                  {each.trueAirspeedKt} kt, {each.degreesPerDot}° a dot, {each.dotsFullScale} dots
                </span>
              </span>
            </label>
            <span class="row">
              <button
                type="button"
                class="quiet"
                aria-label={`Change ${each.name}`}
                onClick={() => {
                  setEditing(each.name);
                }}
              >
                Change
              </button>
              <button
                type="button"
                class="quiet"
                aria-label={`Delete ${each.name}`}
                disabled={aircraft.length === 1}
                onClick={() => {
                  remove(each.name);
                }}
              >
                Delete
              </button>
            </span>
          </li>
        ))}
      </ul>
      {editing === null ? (
        <p>
          <button
            type="button"
            onClick={() => {
              setEditing('');
            }}
          >
            Add an aircraft
          </button>
        </p>
      ) : (
        <AircraftForm
          key={editing}
          name={editing}
          onDone={() => {
            setEditing(null);
          }}
        />
      )}
    </div>
  );
}

const DEFAULT_SCALE = { speed: '', perDot: '2', dots: '5' };

function AircraftForm({
  name,
  onDone,
}: {
  readonly name: string;
  readonly onDone: () => void;
}): JSX.Element {
  const before = settings.peek().aircraft.find((each) => each.name === name);
  const [texts, setTexts] = useState({
    name,
    speed: before === undefined ? DEFAULT_SCALE.speed : String(before.trueAirspeedKt),
    perDot: before === undefined ? DEFAULT_SCALE.perDot : String(before.degreesPerDot),
    dots: before === undefined ? DEFAULT_SCALE.dots : String(before.dotsFullScale),
  });
  const [problems, setProblems] = useState<ReadonlyMap<string, string>>(new Map());
  const text = (key: keyof typeof texts) => ({
    value: texts[key],
    problems,
    onInput: (value: string) => {
      setTexts((now) => ({ ...now, [key]: value }));
    },
  });
  const keep = (): void => {
    const wrong = new Map(nameProblem(texts.name.trim(), name));
    const checked = checkAircraft({
      trueAirspeedKt: readNumber(texts.speed),
      degreesPerDot: readNumber(texts.perDot),
      dotsFullScale: readNumber(texts.dots),
    });
    if (!checked.ok)
      for (const [field, words] of problemTexts(checked.problem)) wrong.set(field, words);
    setProblems(wrong);
    if (!checked.ok || wrong.size > 0) {
      focusFirstProblem();
      return;
    }
    putAircraft(name, { name: texts.name.trim(), ...checked.value });
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
        <Field
          {...text('speed')}
          name="aircraft.trueAirspeedKt"
          label="True airspeed"
          unit="kt"
          isNumber
        />
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
