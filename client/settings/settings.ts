import { computed, effect, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import { readSettings } from './read-settings.ts';
import {
  defaultSettings,
  firstAircraft,
  type NamedAircraft,
  type Settings,
} from './settings-record.ts';

export { BUNDLED_VOICE, type NamedAircraft, type Settings } from './settings-record.ts';

const PLACE = 'spoken-radial.settings';

/** What went wrong with the stored settings, to be shown; null: nothing. */
export const settingsProblem: Signal<string | null> = signal(null);

function stored(): Settings {
  let text: string | null;
  try {
    text = localStorage.getItem(PLACE);
  } catch {
    settingsProblem.value =
      'This browser does not let the page keep settings: they last until it is closed.';
    return defaultSettings;
  }
  if (text === null) return defaultSettings;
  const read = readSettings(text, defaultSettings);
  if (read.ok) return read.value;
  settingsProblem.value = `The stored settings could not be read (${read.problem}). The usual ones are in use.`;
  return defaultSettings;
}

/** The settings in use. Assigning a new value stores it. */
export const settings: Signal<Settings> = signal(stored());

/** The aircraft that new flights start with. */
export const chosenAircraft: ReadonlySignal<NamedAircraft> = computed(() => {
  const { aircraft, chosenAircraft: name } = settings.value;
  return aircraft.find((each) => each.name === name) ?? aircraft[0] ?? firstAircraft;
});

/** Changes some of the settings and keeps the rest. */
export function changeSettings(part: Partial<Settings>): void {
  settings.value = { ...settings.peek(), ...part };
}

effect(() => {
  const value = settings.value;
  // Untouched defaults are not written: a message about broken settings can still be looked into.
  if (value === defaultSettings) return;
  try {
    localStorage.setItem(PLACE, JSON.stringify(value));
  } catch {
    settingsProblem.value = 'The settings could not be stored on this device.';
  }
});

// Another tab of the same browser changed them.
addEventListener('storage', (change) => {
  if (change.key !== PLACE || change.newValue === null) return;
  const read = readSettings(change.newValue, defaultSettings);
  if (read.ok && JSON.stringify(read.value) !== JSON.stringify(settings.peek())) {
    settings.value = read.value;
  }
});
