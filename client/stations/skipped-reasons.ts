import type { SkippedRow } from '../../src/station/library/merge-stations.ts';

/** Why lines were skipped: how many of them, and the first ones. */
export interface SkippedReason {
  readonly reason: string;
  readonly count: number;
  readonly firstLines: readonly number[];
}

const MOST_LINES = 12;
const MOST_REASONS = 60;

/** The commonest reasons first, with some of the lines of each: a world of beacons would fill the page. */
export function skippedReasons(skipped: readonly SkippedRow[]): readonly SkippedReason[] {
  const lines = new Map<string, { count: number; firstLines: number[] }>();
  for (const { line, reason } of skipped) {
    const known = lines.get(reason);
    if (known === undefined) {
      lines.set(reason, { count: 1, firstLines: [line] });
      continue;
    }
    known.count += 1;
    if (known.firstLines.length < MOST_LINES) known.firstLines.push(line);
  }
  return [...lines]
    .map(([reason, about]) => ({ reason, ...about }))
    .toSorted((one, other) => other.count - one.count)
    .slice(0, MOST_REASONS);
}
