/** A staircase: it goes down to what is just heard and stays about there. */
export interface Staircase {
  /** Level of the next question, decibels; the lower the harder. */
  readonly levelDb: number;
  /** Right answers since the level last changed. */
  readonly rights: number;
  /** Which way it last moved. */
  readonly way: 'harder' | 'easier' | null;
  /** The levels at which it turned round, in order. */
  readonly turnsDb: readonly number[];
}

/** From where to where a staircase goes. */
export interface Steps {
  readonly easiestDb: number;
  readonly hardestDb: number;
}

/** Tone over noise in 3 kHz. *Source:* a proposal of this project. */
export const NOISE_STEPS: Steps = { easiestDb: 15, hardestDb: -12 };

/** Tone over a voice on the channel. *Source:* a proposal of this project. */
export const VOICE_STEPS: Steps = { easiestDb: 6, hardestDb: -6 };

const STEP_DB = 2;
const RIGHTS_TO_GO_DOWN = 2;

/** How many of the last turns make the threshold, and how many there must be at least. */
const TURNS_COUNTED = 6;
const TURNS_NEEDED = 4;

/** A staircase that nothing has been answered on: it starts where it is easiest. */
export function startStaircase({ easiestDb }: Steps): Staircase {
  return { levelDb: easiestDb, rights: 0, way: null, turnsDb: [] };
}

/**
 * The staircase after one answer: two right go 2 dB down, one wrong goes 2 dB up, within the steps.
 *
 * Held at its hardest level by right answers it counts that as a turn, so that the threshold gets there.
 * *Source:* H. Levitt, "Transformed up-down methods in psychoacoustics", Journal of the Acoustical
 * Society of America 49 (1971) 467-477: two down, one up settles where 70.7 % are right (from memory).
 */
export function answerOn(staircase: Staircase, isRight: boolean, steps: Steps): Staircase {
  const rights = isRight ? staircase.rights + 1 : 0;
  if (isRight && rights < RIGHTS_TO_GO_DOWN) return { ...staircase, rights };
  const way = isRight ? 'harder' : 'easier';
  const wantedDb = staircase.levelDb + (isRight ? -STEP_DB : STEP_DB);
  const levelDb = Math.min(steps.easiestDb, Math.max(steps.hardestDb, wantedDb));
  const isHeldAtFloor = isRight && staircase.levelDb === steps.hardestDb;
  const hasTurned = (staircase.way !== null && staircase.way !== way) || isHeldAtFloor;
  return {
    levelDb,
    rights: 0,
    way,
    turnsDb: hasTurned ? [...staircase.turnsDb, staircase.levelDb] : staircase.turnsDb,
  };
}

/**
 * The level at which about 71 % are right, decibels: the mean of the last six turns; null before four.
 *
 * At the hardest level it means "this or better".
 */
export function thresholdDb({ turnsDb }: Staircase): number | null {
  if (turnsDb.length < TURNS_NEEDED) return null;
  const last = turnsDb.slice(-TURNS_COUNTED);
  return last.reduce((sum, each) => sum + each, 0) / last.length;
}
