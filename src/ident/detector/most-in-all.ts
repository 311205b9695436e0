/** A stretch that takes its room for itself, and what it is worth. */
export interface Claim {
  readonly from: number;
  /** From here on the next one may begin. */
  readonly to: number;
  readonly worth: number;
}

/**
 * Those of many stretches that do not overlap and are worth most together, in order of time.
 *
 * Stretches worth nothing or less are left out. *Source:* weighted interval scheduling by dynamic
 * programming (Kleinberg and Tardos, Algorithm Design, 6.1; from memory).
 */
export function mostInAll<T>(all: readonly T[], claimOf: (one: T) => Claim): T[] {
  const sorted = all
    .map((one) => ({ one, ...claimOf(one) }))
    .filter(({ worth }) => worth > 0)
    .sort((a, b) => a.to - b.to);
  // The most that the first n are worth, and how many lie before the n-th when that one is taken.
  const most = new Float64Array(sorted.length + 1);
  const before = sorted.map(({ from }) => countEnding(sorted, from));
  for (const [n, { worth }] of sorted.entries()) {
    most[n + 1] = Math.max(most[n] ?? 0, worth + (most[before[n] ?? 0] ?? 0));
  }
  const chosen: T[] = [];
  for (let n = sorted.length; n > 0;) {
    const last = sorted[n - 1];
    if (last === undefined || most[n] === most[n - 1]) {
      n -= 1;
      continue;
    }
    chosen.unshift(last.one);
    n = before[n - 1] ?? 0;
  }
  return chosen;
}

/** How many of the claims, sorted by their ends, end at a time or before. */
function countEnding(sorted: readonly Claim[], at: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.to ?? Infinity) <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}
