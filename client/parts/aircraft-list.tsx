import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { changeSettings, chosenAircraft, settings } from '../settings/settings.ts';
import { AircraftForm } from './aircraft-form.tsx';

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
