// What is measured of the ear, and how good it should be.

/** Goals for one line, in per cent; those left out are none. */
export interface LineGoals {
  /** Whole idents right, at least. */
  readonly whole?: number;
  /** The ident that is there confirmed, at least. */
  readonly confirmed?: number;
  /** The ident that is there called another one, at most. */
  readonly rejected?: number;
}

/** Clips of one kind. */
export interface Line {
  readonly name: string;
  readonly condition: string;
  readonly repeats: number;
  readonly goals: LineGoals;
}

/** A station is there. */
export const STATION_LINES: readonly Line[] = [
  line('awgn-12', 1, { whole: 99.5, confirmed: 93, rejected: 0.2 }),
  line('awgn-16', 1, { whole: 88, rejected: 0.2 }),
  line('awgn-18', 2, { whole: 92, rejected: 0.2 }),
  line('awgn-18', 3, { whole: 96, confirmed: 85, rejected: 0.2 }),
  line('awgn-20', 3, { whole: 75, rejected: 0.2 }),
  line('cabin0', 1, { whole: 99.6, confirmed: 99, rejected: 0.2 }),
  line('voice-6', 1, { whole: 99, confirmed: 98.5, rejected: 0.2 }),
  line('hand', 1, { whole: 92, rejected: 1 }),
  line('fade', 1, { whole: 99, rejected: 0.2 }),
];

/** A station is there, without goals of their own: how it goes in other kinds of air. */
export const MORE_LINES: readonly Line[] = [
  line('all0', 1, {}),
  line('cam', 1, {}),
  line('agc', 1, {}),
  line('clip', 1, {}),
  line('reverb', 1, {}),
  line('band', 1, {}),
  line('dme', 4, {}),
  line('dme-only', 1, {}),
  line('off-tune', 1, {}),
  line('rates', 1, {}),
  line('cabin-6', 1, {}),
  line('voice-12', 1, {}),
];

/** A station is there that must not be confirmed without more: cut off, or not alone. */
export const DOUBTFUL_LINES: readonly Line[] = [
  line('cut-start', 1, {}),
  line('cut-end', 1, {}),
  line('overlap', 2, {}),
  line('retuned', 1, {}),
  line('test', 2, {}),
];

/** No station is there. */
export const EMPTY_CONDITIONS = [
  'none_noise',
  'none_speech',
  'none_cabin',
  'none_mix',
  'none_steady',
  'none_pulses',
  'none_beeps',
] as const;

function line(condition: string, repeats: number, goals: LineGoals): Line {
  return { name: `${condition} R${repeats}`, condition, repeats, goals };
}
