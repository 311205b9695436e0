import { MS_PER_S } from '../base/units.ts';
import type { Estimate } from './estimate-record.ts';
import { indicatedRadialDeg, needleDeg, radialSdDeg } from './deviation.ts';
import { onwardTo } from './onward.ts';

/** Intervals to choose from, longest first, seconds. Common practice, no source. */
const INTERVALS_S = [120, 90, 60] as const;
const SHORTEST_S = 30;
/** The needle and its uncertainty may together grow to this before the next reading. Tuned by simulation. */
const GREATEST_OFF_DEG = 1.3;
/** Inside this range readings come at least every minute: there a dot is 0.14 NM. Common practice, no source. */
const CLOSE_NM = 4;

/**
 * When the next reading is worth most: the longest of 30, 60, 90, 120 s after which the needle will still be
 * within 1.3 degrees, its uncertainty included, if the advice is flown; at most 60 s inside 4 NM.
 */
export function nextReadingInS(estimate: Estimate): number {
  const { atMs, scene } = estimate;
  if (atMs === null || !estimate.isPlaced || estimate.doubt || estimate.isLost) return SHORTEST_S;
  const flag = scene.isTo ? 'to' : 'from';
  for (const afterS of INTERVALS_S) {
    const { belief } = onwardTo(estimate, atMs + afterS * MS_PER_S);
    const radialDeg = indicatedRadialDeg(belief.mean, scene);
    const offDeg = Math.abs(needleDeg(radialDeg, scene.courseDeg, flag));
    const isClose = Math.exp(belief.mean.lnRange) < CLOSE_NM;
    if (offDeg + radialSdDeg(belief) < GREATEST_OFF_DEG && !(isClose && afterS > 60)) return afterS;
  }
  return SHORTEST_S;
}

/** The same, but not later than the end of the leg (`toGoS` from now; null: not known), and at least 30 s. */
export function readBeforeEndS(intervalS: number, toGoS: number | null): number {
  if (toGoS === null || toGoS <= 0) return intervalS;
  return Math.min(intervalS, Math.max(SHORTEST_S, Math.round(toGoS)));
}
