import { alongLine } from './along-line.ts';
import type { Belief } from './belief.ts';
import type { Interval } from './carry-on.ts';
import type { Estimate } from './estimate-record.ts';
import type { Misfit } from './judge.ts';
import type { Reading } from './reading.ts';
import { resetAwaited } from './reset-indicator.ts';
import { watchCarriedOn, watchReading, watchWhileOpen } from './watch.ts';
import type { Watch } from './watch-record.ts';

/** Nearer than this to the station nothing is watched for: there the needle runs by itself. */
const WATCHED_FROM_NM = 2;

/** Centred each time by turning the OBS, the needle shows the radial, and not that it moves by itself. */
function isCentredByHand({ rangeCheck }: Estimate, { needleDots }: Reading): boolean {
  return rangeCheck.kind === 'flying' && needleDots === 0;
}

/** The suspicions after a reading. With a flag that contradicts, the needle has no meaning to be watched. */
export function watched(
  before: Estimate,
  interval: Interval,
  { belief: predicted, misfit }: { readonly belief: Belief; readonly misfit: Misfit },
  reading: Reading,
): Watch {
  if (interval.durationS <= 0) return before.watch;
  const watch = { ...before.watch, resetAwaited: resetAwaited(before) };
  const from = { belief: before.belief, carryOn: interval.carryOn, readings: before.readings };
  if (before.openBearing) return watchWhileOpen(watch, from, predicted, before.scene, reading);
  const isClose = Math.exp(predicted.mean.lnRange) < WATCHED_FROM_NM;
  if (isClose || before.hasPassed || misfit.flag || isCentredByHand(before, reading)) {
    return watchCarriedOn(watch, interval.carryOn);
  }
  const after = watchReading(watch, from, predicted, before.scene, reading);
  // On the way to the station another leg was flown, by headings that this one has not told.
  return isBeforeOutbound(before) ? { ...after, reversed: [], jumps: [] } : after;
}

/** Whether the station of a leg from it is still ahead. */
function isBeforeOutbound({ scene, belief }: Estimate): boolean {
  return !scene.isTo && alongLine(belief.mean, scene).pastStationNm < 0;
}
