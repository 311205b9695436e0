import { computed, effect, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { Aircraft } from '../../src/leg/leg.ts';
import { readSettings } from './read-settings.ts';

/** One of the pilot's aircraft: the name tells them apart. */
export interface NamedAircraft extends Aircraft {
  readonly name: string;
}

/** What the pilot has set, kept on this device. */
export interface Settings {
  /** At least one. */
  readonly aircraft: readonly NamedAircraft[];
  /** Name of the aircraft that new flights start with. */
  readonly chosenAircraft: string;
  /** How the point in a figure is spoken. */
  readonly decimalWord: 'decimal' | 'point';
  readonly voiceOn: boolean;
  /** Name of a voice of the browser; null: the tool chooses; `BUNDLED_VOICE`: the one it brings. */
  readonly voiceName: string | null;
  /** Speed of the voice, 0.5 to 1.5; 1 is its own pace. */
  readonly rate: number;
  /** Of voice and idents, 0 to 1. */
  readonly volume: number;
  readonly palette: 'day' | 'night' | 'auto';
  /** Keying speed of idents that the tool plays, words per minute, 5 to 15. */
  readonly identWpm: number;
  /** When the cautions were read; null: they are shown before anything else. */
  readonly cautionsReadAtMs: number | null;
}

/** Value of `voiceName` that asks for the voice that comes with the tool. */
export const BUNDLED_VOICE = 'bundled';

/** What the tool starts with on a new device. */
export const defaultSettings: Settings = {
  aircraft: [{ name: 'My aircraft', trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 }],
  chosenAircraft: 'My aircraft',
  decimalWord: 'decimal',
  voiceOn: true,
  voiceName: null,
  rate: 1,
  volume: 0.9,
  palette: 'auto',
  identWpm: 7,
  cautionsReadAtMs: null,
};

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

const firstAircraft: NamedAircraft = {
  name: 'My aircraft',
  trueAirspeedKt: 95,
  degreesPerDot: 2,
  dotsFullScale: 5,
};

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
