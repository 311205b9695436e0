/** Slowest and fastest keying that is looked for, words a minute. */
const SLOWEST_WPM = 4;
const FASTEST_WPM = 16;

/** Length of a dot, seconds: 1.2 / wpm (PARIS, 50 dots). *Source:* ITU-R M.1677-1, by its word. */
function dotOfWpm(wpm: number): number {
  return 1.2 / wpm;
}

const COARSE_STEP = 1.03;

/** Dot lengths of a first search, seconds, 3 % apart. */
export const COARSE_DOTS_S: readonly number[] = Array.from(
  { length: Math.ceil(Math.log(FASTEST_WPM / SLOWEST_WPM) / Math.log(COARSE_STEP)) + 1 },
  (_, n) => dotOfWpm(FASTEST_WPM) * COARSE_STEP ** n,
);
