import type { ListeningView } from '../../src/ident/listening.ts';
import type { LevelStretch } from './ear-messages.ts';

/** How listening stands. */
export interface EarState {
  readonly phase: 'off' | 'opening' | 'listening' | 'reading' | 'over';
  /** The microphone, or the file, by its name. */
  readonly from: string | null;
  /** Which ident is listened for; null: any. */
  readonly expected: string | null;
  /** What went wrong and what to do; null: nothing. */
  readonly problem: string | null;
  /** What has to be known about the sound, though it can be listened to. */
  readonly note: string | null;
  readonly view: ListeningView | null;
  /** How much of a file has been heard, 0 to 1; null for the microphone. */
  readonly fraction: number | null;
  /** Length of the file, seconds; null for the microphone. */
  readonly lengthS: number | null;
}

/** Nothing has been listened to. */
export const EAR_OFF: EarState = {
  phase: 'off',
  from: null,
  expected: null,
  problem: null,
  note: null,
  view: null,
  fraction: null,
  lengthS: null,
};

/** Levels that are kept, values: a little more than the longest recording. */
const MOST_LEVELS = 4000;

/** A track of levels with the next stretch added and the oldest let go. */
export function withLevels(track: LevelStretch, next: LevelStretch): LevelStretch {
  if (next.fromS === 0 || track.levelsDb.length === 0) return next;
  const all = [...track.levelsDb, ...next.levelsDb];
  const gone = Math.max(0, all.length - MOST_LEVELS);
  return {
    fromS: track.fromS + gone * track.stepS,
    stepS: track.stepS,
    levelsDb: gone === 0 ? all : all.slice(gone),
  };
}

/** No levels. */
export const NO_LEVELS: LevelStretch = { fromS: 0, stepS: 0.032, levelsDb: [] };
