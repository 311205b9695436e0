import { MS_PER_S } from '../base/units.ts';
import type { Reading } from './reading.ts';

/** Seconds; as a pilot with other things to do reads. Common practice, no source. */
const USUAL_S = 60;
const SHORTEST_S = 20;
const LONGEST_S = 120;
/** How many of the last intervals count. */
const INTERVALS = 3;

/**
 * How long until the next reading comes, judged by the last ones: the middle one of the last three
 * intervals, between 20 and 120 s; 60 s before there are any.
 */
export function cadenceS(readings: readonly Reading[]): number {
  const times = readings.slice(-1 - INTERVALS).map((each) => each.atMs);
  const gaps: number[] = [];
  for (let index = 1; index < times.length; index += 1) {
    const gapS = ((times[index] ?? 0) - (times[index - 1] ?? 0)) / MS_PER_S;
    if (gapS > 0) gaps.push(gapS);
  }
  gaps.sort((one, other) => one - other);
  const middle = gaps[Math.floor(gaps.length / 2)] ?? USUAL_S;
  return Math.min(LONGEST_S, Math.max(SHORTEST_S, middle));
}
