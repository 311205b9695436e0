/** What is known of how well a letter is known. */
export interface LetterStrength {
  /** How often it was sent where its letters counted, and how often it was taken right. */
  readonly heard: number;
  readonly right: number;
  /** The last answers written down, oldest first, at most `RECENT`. */
  readonly recent: readonly boolean[];
  /** After this many days the chance to know it has fallen by half. */
  readonly halfLifeDays: number;
  /** When it was last heard, and when the half-life last grew; null: never. */
  readonly lastAtMs: number | null;
  readonly grewAtMs: number | null;
}

/** One answer about a letter. */
export interface LetterAnswer {
  readonly atMs: number;
  readonly isRight: boolean;
  /** Within two seconds of the end of the sound, heard once. */
  readonly isFast: boolean;
  /** Written down by ear; else only told apart from another. */
  readonly isWritten: boolean;
}

/** How many answers a letter's score looks back on. */
const RECENT = 20;

const NEEDED_RIGHT = 0.9;

const DAY_MS = 86_400_000;
const SHORTEST_DAYS = 0.02;
const LONGEST_DAYS = 180;

/** Right again within this time shows nothing new about how long it will be kept. */
const REST_MS = 10 * 60_000;

/** Factors of the half-life. *Source:* a proposal of this project; nothing was measured on people. */
const GROWTH = { fast: 2, slow: 1.2, wrong: 0.4 } as const;

/** A letter that was never heard. */
export const NEW_LETTER: LetterStrength = {
  heard: 0,
  right: 0,
  recent: [],
  halfLifeDays: 0.5,
  lastAtMs: null,
  grewAtMs: null,
};

/**
 * A letter's strength after one more answer.
 *
 * The half-life doubles when right and fast, grows by a fifth when right and slow, at most once in ten
 * minutes; wrong takes it down to two fifths, always. Between half an hour and half a year.
 */
export function afterAnswer(letter: LetterStrength, answer: LetterAnswer): LetterStrength {
  const { isRight, isFast, isWritten, atMs } = answer;
  const isTooSoon = isRight && letter.grewAtMs !== null && atMs - letter.grewAtMs < REST_MS;
  const factor = isRight ? (isFast ? GROWTH.fast : GROWTH.slow) : GROWTH.wrong;
  const wantedDays = isTooSoon ? letter.halfLifeDays : letter.halfLifeDays * factor;
  return {
    heard: letter.heard + 1,
    right: letter.right + (isRight ? 1 : 0),
    recent: isWritten ? [...letter.recent, isRight].slice(-RECENT) : letter.recent,
    halfLifeDays: Math.min(LONGEST_DAYS, Math.max(SHORTEST_DAYS, wantedDays)),
    lastAtMs: atMs,
    grewAtMs: isRight && !isTooSoon ? atMs : letter.grewAtMs,
  };
}

/** The chance that the letter is known at this time, 0 (never heard) to 1. */
export function recallAt(letter: LetterStrength, atMs: number): number {
  if (letter.lastAtMs === null) return 0;
  const ageDays = Math.max(0, atMs - letter.lastAtMs) / DAY_MS;
  return 2 ** (-ageDays / letter.halfLifeDays);
}

/** Whether nine in ten of the last 20 were right, all 20 having been written down. */
export function isMastered({ recent }: LetterStrength): boolean {
  const right = recent.filter(Boolean).length;
  return recent.length >= RECENT && right >= NEEDED_RIGHT * RECENT;
}
