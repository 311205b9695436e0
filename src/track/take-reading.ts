import type { Belief } from './belief.ts';
import type { Interval } from './carry-on.ts';
import { SETTLED_AFTER, weigh } from './doubt.ts';
import type { Doubt, Estimate, Jump } from './estimate-record.ts';
import { FITS, isMisfit, judge } from './judge.ts';
import type { Misfit } from './judge.ts';
import { afterPassage } from './passage.ts';
import { isFromUnproven, withFlag } from './passed.ts';
import type { Reading } from './reading.ts';
import { placeFromReading } from './start-belief.ts';
import { takeIn } from './take-in.ts';
import { LONGEST_GAP_S } from './tuning.ts';
import { watchReading } from './watch.ts';
import { NOTHING_SUSPECTED } from './watch-record.ts';
import type { Watch } from './watch-record.ts';

/** Nearer than this to the station nothing is watched for: there the needle runs by itself. */
const WATCHED_FROM_NM = 2;

/** For how many readings a jump of the place is told: time for the check that it asks for. */
const JUMP_TOLD_FOR = 5;

/** What the filter makes of one reading of the leg's own station, after the interval that led to it. */
export type Taken = Pick<
  Estimate,
  | 'belief'
  | 'isPlaced'
  | 'takenIn'
  | 'doubt'
  | 'watch'
  | 'isLost'
  | 'jump'
  | 'flag'
  | 'lastToAtMs'
  | 'hasPassed'
>;

/**
 * Takes in one reading: places the aircraft if it was not placed (or not seen for too long), puts a passage
 * right, weighs what does not fit, and watches for faults.
 */
export function takeReading(before: Estimate, interval: Interval, reading: Reading): Taken {
  if (isToPlace(before, interval, reading)) return placed(before, reading);
  const { scene } = before;
  const carried = interval.carryOn(before.belief);
  const since = before.hasPassed ? null : before.lastToAtMs;
  const belief = afterPassage(carried, scene, reading, since) ?? carried;
  const misfit = judge(belief, scene, reading);
  const flags = withFlag(before, reading, misfit.flag);
  const watch = watched(before, interval, { belief, misfit }, reading);
  if (!isMisfit(misfit)) {
    return {
      ...flags,
      belief: takeIn(belief, scene, reading, misfit),
      isPlaced: true,
      takenIn: before.takenIn + 1,
      doubt: null,
      isLost: false,
      jump: fading(before.jump),
      watch,
    };
  }
  const verdict = weigh(belief, scene, reading, misfit, {
    doubt: carriedDoubt(before.doubt, interval.carryOn),
    takenIn: before.takenIn,
    lastDmeNm: lastDmeNm(before),
  });
  const isAfresh = verdict.isConfirmed || verdict.isLost;
  return {
    ...flags,
    belief: verdict.belief,
    isPlaced: true,
    takenIn: isAfresh ? 1 : before.takenIn,
    doubt: verdict.doubt,
    isLost: verdict.isLost,
    jump: isAfresh ? jumpFrom(before, misfit) : fading(before.jump),
    watch: isAfresh ? NOTHING_SUSPECTED : watch,
  };
}

/** Whether the place is to be set by this reading alone. */
function isToPlace(before: Estimate, interval: Interval, reading: Reading): boolean {
  if (!before.isPlaced || interval.durationS > LONGEST_GAP_S) return true;
  // A TO right after a FROM that nothing has proven: the FROM was the slip.
  return reading.flag === 'to' && isFromUnproven(before);
}

/** The first place of a leg, or a new one after too long a gap. */
function placed(before: Estimate, reading: Reading): Taken {
  const { scene } = before;
  const flags = withFlag(before, reading, false);
  const unseen = { doubt: null, isLost: false, jump: null, watch: NOTHING_SUSPECTED };
  if (reading.flag === 'off' && reading.dmeNm === undefined) {
    return { ...flags, ...unseen, belief: before.belief, isPlaced: false, takenIn: 0 };
  }
  const belief = takeIn(placeFromReading(before.belief, scene, reading), scene, reading, FITS);
  return { ...flags, ...unseen, belief, isPlaced: true, takenIn: 1 };
}

/** A jump of a settled place, to be told; a start that was put right is none. */
function jumpFrom(before: Estimate, misfit: Misfit): Jump | null {
  return before.takenIn < SETTLED_AFTER ? null : { misfit, readingsLeft: JUMP_TOLD_FOR };
}

function fading(jump: Jump | null): Jump | null {
  if (!jump || jump.readingsLeft <= 1) return null;
  return { ...jump, readingsLeft: jump.readingsLeft - 1 };
}

function lastDmeNm({ readings }: Estimate): number | null {
  return readings.findLast((each) => each.dmeNm !== undefined)?.dmeNm ?? null;
}

function carriedDoubt(doubt: Doubt | null, carryOn: (belief: Belief) => Belief): Doubt | null {
  return doubt && { ...doubt, otherwise: carryOn(doubt.otherwise) };
}

function watched(
  before: Estimate,
  interval: Interval,
  { belief: predicted, misfit }: { readonly belief: Belief; readonly misfit: Misfit },
  reading: Reading,
): Watch {
  // With a flag that contradicts, the needle has no meaning to be watched.
  if (misfit.flag) return before.watch;
  const isClose = Math.exp(predicted.mean.lnRange) < WATCHED_FROM_NM;
  if (interval.durationS <= 0 || isClose || before.hasPassed) return before.watch;
  const from = { belief: before.belief, carryOn: interval.carryOn, readings: before.readings };
  return watchReading(before.watch, from, predicted, before.scene, reading);
}
