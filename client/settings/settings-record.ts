import { USUAL_INDICATOR, type Aircraft } from '../../src/leg/leg.ts';
import type { AirspeedRead } from '../../src/wind/airspeed.ts';

/** One of the pilot's aircraft: the name tells them apart. */
export interface NamedAircraft extends Aircraft {
  readonly name: string;
  /** What its true airspeed was worked out from; left out where that was typed. */
  readonly airspeedFrom?: AirspeedRead;
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
  /** Minutes after which an ident that was confirmed is asked for again, 1 to 60; 0: never. */
  readonly identAgainMin: number;
  /** When the cautions were read; null: they are shown before anything else. */
  readonly cautionsReadAtMs: number | null;
}

/** Value of `voiceName` that asks for the voice that comes with the tool. */
export const BUNDLED_VOICE = 'bundled';

/** The aircraft of a new device: a light single with a common course indicator. */
export const firstAircraft: NamedAircraft = {
  name: 'My aircraft',
  trueAirspeedKt: 95,
  ...USUAL_INDICATOR,
};

/** What the tool starts with on a new device. */
export const defaultSettings: Settings = {
  aircraft: [firstAircraft],
  chosenAircraft: firstAircraft.name,
  decimalWord: 'decimal',
  voiceOn: true,
  voiceName: null,
  rate: 1,
  volume: 0.9,
  palette: 'auto',
  identWpm: 7,
  identAgainMin: 15,
  cautionsReadAtMs: null,
};
