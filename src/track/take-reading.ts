import type { Belief } from './belief.ts';
import type { Interval } from './carry-on.ts';
import { SETTLED_AFTER, weigh } from './doubt.ts';
import type { Doubt, Estimate, Jump } from './estimate-record.ts';
import { FITS, isMisfit, judge } from './judge.ts';
import type { Misfit } from './judge.ts';
import { beforeStop, isFirstOffStop, withoutStop, withoutStopAfter } from './on-stop.ts';
import { afterPassage } from './passage.ts';
import { withFlagTaken } from './flag-side.ts';
import { isFromUnproven, withFlag } from './passed.ts';
import type { Reading } from './reading.ts';
import { afterReset, resetAwaited } from './reset-indicator.ts';
import { agedAir, placeFromReading } from './start-belief.ts';
import { takeIn } from './take-in.ts';
import { LONGEST_GAP_S } from './tuning.ts';
import { watchCarriedOn, watchReading } from './watch.ts';
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
  | 'withoutStop'
>;

/**
 * Takes in one reading: places the aircraft if it was not placed (or not seen for too long), puts a passage
 * right, weighs what does not fit, and watches for faults.
 */
export function takeReading(before: Estimate, interval: Interval, reading: Reading): Taken {
  if (isToPlace(before, interval, reading)) {
    return placed({ ...before, belief: agedAir(before.belief, interval.durationS) }, reading);
  }
  const reset = afterReset(before, interval, reading);
  if (reset) return checked(before, reset, reading);
  const { scene } = before;
  const main = interval.carryOn(before.belief);
  const withoutStop = before.withoutStop && interval.carryOn(before.withoutStop);
  const start = beforeStop(before, main, withoutStop, reading);
  const since = before.hasPassed ? null : before.lastToAtMs;
  const flagTaken = withFlagTaken(before, interval, reading);
  const belief =
    flagTaken?.prior ?? afterPassage(start, scene, reading, since, before.start.belief) ?? start;
  const misfit = judge(belief, scene, reading);
  const carried = { belief, main, withoutStop, taken: flagTaken?.posterior ?? null };
  return isMisfit(misfit)
    ? doubted(before, interval, carried, misfit, reading)
    : fitting(before, interval, carried, reading);
}

/** The first reading after the pilot has set the direction indicator as asked: nothing is suspected any more. */
function checked(before: Estimate, belief: Belief, reading: Reading): Taken {
  return {
    ...withFlag(before, reading, false),
    belief: takeIn(belief, before.scene, reading, FITS),
    isPlaced: true,
    takenIn: before.takenIn + 1,
    doubt: null,
    isLost: false,
    jump: null,
    watch: NOTHING_SUSPECTED,
    withoutStop: null,
  };
}

/** What goes into a reading, carried on to its time. */
interface Carried {
  /** What the reading is held against. */
  readonly belief: Belief;
  /** The main belief; another one than `belief` while the needle rests on its stop. */
  readonly main: Belief;
  readonly withoutStop: Belief | null;
  /** What is believed after the reading if it fits, where the flag has told that too. */
  readonly taken: Belief | null;
}

/** A reading that fits what is believed. */
function fitting(
  before: Estimate,
  interval: Interval,
  { belief, withoutStop, taken }: Carried,
  reading: Reading,
): Taken {
  return {
    ...withFlag(before, reading, false),
    belief: taken ?? takeIn(belief, before.scene, reading, FITS),
    isPlaced: true,
    takenIn: before.takenIn + 1,
    doubt: null,
    isLost: false,
    jump: fading(before.jump),
    watch: watched(before, interval, { belief, misfit: FITS }, reading),
    withoutStop: withoutStopAfter(before, withoutStop, reading),
  };
}

/** A reading that does not fit: kept out, believed, or the place is lost. */
function doubted(
  before: Estimate,
  interval: Interval,
  { belief, main, withoutStop }: Carried,
  misfit: Misfit,
  reading: Reading,
): Taken {
  if (isPlaceOpen(before, misfit, reading))
    return { ...placed(before, reading), jump: fading(before.jump) };
  const verdict = weigh(withoutStop ? main : belief, before.scene, reading, misfit, {
    doubt: carriedDoubt(before.doubt, interval.carryOn),
    takenIn: before.takenIn,
    lastDmeNm: lastDmeNm(before),
  });
  const isAfresh = verdict.isConfirmed || verdict.isLost;
  return {
    ...withFlag(before, reading, misfit.flag),
    belief: verdict.belief,
    isPlaced: true,
    takenIn: isAfresh ? 1 : before.takenIn,
    doubt: verdict.doubt,
    isLost: verdict.isLost,
    jump: isAfresh ? jumpFrom(before, misfit) : fading(before.jump),
    watch: isAfresh ? NOTHING_SUSPECTED : watched(before, interval, { belief, misfit }, reading),
    withoutStop: isAfresh ? null : withoutStop,
  };
}

/**
 * Whether there is no place that a reading could contradict: on its stop the needle has not told the radial yet, and
 * a picture that is lost waits for just this reading.
 */
function isPlaceOpen(before: Estimate, misfit: Misfit, reading: Reading): boolean {
  if ((misfit.needle || misfit.flag) && isFirstOffStop(before, reading)) return true;
  const { needleDots, flag, dmeNm } = reading;
  const isRadialRead = needleDots === 0 && flag !== 'off';
  return before.isLost && isRadialRead && (before.scene.dme === null || dmeNm !== undefined);
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
  const unseen = {
    doubt: null,
    isLost: false,
    jump: null,
    watch: NOTHING_SUSPECTED,
    withoutStop: null,
  };
  if (reading.flag === 'off' && reading.dmeNm === undefined) {
    return { ...flags, ...unseen, belief: before.belief, isPlaced: false, takenIn: 0 };
  }
  const place = placeFromReading(before.belief, scene, reading);
  return {
    ...flags,
    ...unseen,
    belief: takeIn(place, scene, reading, FITS),
    isPlaced: true,
    takenIn: 1,
    withoutStop: withoutStop(place, scene, reading),
  };
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

/** Centred each time by turning the OBS, the needle shows the radial, and not that it moves by itself. */
function isCentredByHand({ rangeCheck }: Estimate, { needleDots }: Reading): boolean {
  return rangeCheck.kind === 'flying' && needleDots === 0;
}

/** The suspicions after a reading. With a flag that contradicts, the needle has no meaning to be watched. */
function watched(
  before: Estimate,
  interval: Interval,
  { belief: predicted, misfit }: { readonly belief: Belief; readonly misfit: Misfit },
  reading: Reading,
): Watch {
  if (interval.durationS <= 0) return before.watch;
  const watch = { ...before.watch, resetAwaited: resetAwaited(before) };
  const isClose = Math.exp(predicted.mean.lnRange) < WATCHED_FROM_NM;
  if (isClose || before.hasPassed || misfit.flag || isCentredByHand(before, reading)) {
    return watchCarriedOn(watch, interval.carryOn);
  }
  const from = { belief: before.belief, carryOn: interval.carryOn, readings: before.readings };
  return watchReading(watch, from, predicted, before.scene, reading);
}
