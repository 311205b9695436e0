import type { Belief } from './belief.ts';
import type { Interval } from './carry-on.ts';
import { openPieces } from './open-bearing.ts';
import { openPiecesAfter } from './weigh-open.ts';
import { SETTLED_AFTER, weigh } from './doubt.ts';
import type { Doubt, Estimate, Jump } from './estimate-record.ts';
import { FITS, isMisfit, judge } from './judge.ts';
import type { Misfit } from './judge.ts';
import { joined } from './range-pieces.ts';
import type { Piece } from './range-pieces.ts';
import { isOnStop } from './update-needle.ts';
import { afterPassage } from './passage.ts';
import { withFlagTaken } from './flag-side.ts';
import { isFromUnproven, withFlag } from './passed.ts';
import type { Reading } from './reading.ts';
import { afterReset, resetAwaited } from './reset-indicator.ts';
import { agedAir, placeFromReading } from './start-belief.ts';
import { takeIn } from './take-in.ts';
import { LONGEST_GAP_S } from './tuning.ts';
import { watchCarriedOn, watchReading, watchWhileOpen } from './watch.ts';
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
  | 'openBearing'
>;

/**
 * Takes in one reading: places the aircraft if it was not placed (or not seen for too long), puts a passage
 * right, weighs what does not fit, and watches for faults.
 */
export function takeReading(before: Estimate, interval: Interval, reading: Reading): Taken {
  if (isToPlace(before, interval, reading)) {
    return placed({ ...before, belief: agedAir(before.belief, interval.durationS) }, reading);
  }
  if (before.openBearing) return takenWhileOpen(before, before.openBearing, interval, reading);
  const reset = afterReset(before, interval, reading);
  if (reset) return checked(before, reset, reading);
  const { scene } = before;
  const main = interval.carryOn(before.belief);
  const since = before.hasPassed ? null : before.lastToAtMs;
  const flagTaken = withFlagTaken(before, interval, reading);
  const belief =
    flagTaken?.prior ?? afterPassage(main, scene, reading, since, before.start.belief) ?? main;
  const misfit = judge(belief, scene, reading);
  return isMisfit(misfit)
    ? doubted(before, interval, belief, misfit, reading)
    : fitting(before, interval, { belief, taken: flagTaken?.posterior ?? null }, reading);
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
    openBearing: null,
  };
}

/**
 * A reading while the bearing is open: it only weighs what is open, and the DME alone can be in doubt. The first needle
 * off its stop tells the bearing, whatever was inferred before it; where it contradicts all that was open (as after a
 * slip in the first reading) the place is its own, and nothing of the air is kept that rested on another bearing.
 */
function takenWhileOpen(
  before: Estimate,
  pieces: readonly Piece[],
  interval: Interval,
  reading: Reading,
): Taken {
  const { scene } = before;
  const carried = pieces.map(({ belief, weight }) => ({
    belief: interval.carryOn(belief),
    weight,
  }));
  const prior = joined(carried) ?? interval.carryOn(before.belief);
  const { dme } = judge(prior, scene, reading);
  const after = openPiecesAfter(carried, scene, reading, dme);
  const belief = after && joined(after);
  if (!belief) {
    const air = agedAir(before.start.belief, interval.durationS);
    return placed({ ...before, belief: air }, reading);
  }
  const taken = dme
    ? doubted(before, interval, prior, { ...FITS, dme }, reading)
    : fitting(before, interval, { belief: prior, taken: belief }, reading);
  // A DME that has proved to be right against all that was open has opened everything again.
  if (dme && !taken.doubt) return taken;
  const isTold =
    reading.needleDots !== undefined && reading.flag !== 'off' && !isOnStop(scene, reading);
  return { ...taken, belief, openBearing: isTold ? null : after };
}

/**
 * A reading that fits what is believed (`belief`, carried on to its time). `taken`: what is believed after it, where
 * that is known already.
 */
function fitting(
  before: Estimate,
  interval: Interval,
  { belief, taken }: { readonly belief: Belief; readonly taken: Belief | null },
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
    openBearing: null,
  };
}

/** A reading that does not fit: kept out, believed, or the place is lost. */
function doubted(
  before: Estimate,
  interval: Interval,
  belief: Belief,
  misfit: Misfit,
  reading: Reading,
): Taken {
  if (isPlaceOpen(before, reading))
    return { ...placed(before, reading), jump: fading(before.jump) };
  const verdict = weigh(belief, before.scene, reading, misfit, {
    doubt: carriedDoubt(before.doubt, interval.carryOn),
    takenIn: before.takenIn,
    lastDmeNm: lastDmeNm(before),
  });
  const isAfresh = verdict.isConfirmed || verdict.isLost;
  const open = isAfresh ? openPieces(verdict.belief, before.scene, reading) : null;
  return {
    ...withFlag(before, reading, misfit.flag),
    belief: (open && joined(open)) ?? verdict.belief,
    isPlaced: true,
    takenIn: isAfresh ? 1 : before.takenIn,
    doubt: verdict.doubt,
    isLost: verdict.isLost,
    jump: isAfresh ? jumpFrom(before, misfit) : fading(before.jump),
    watch: isAfresh ? NOTHING_SUSPECTED : watched(before, interval, { belief, misfit }, reading),
    openBearing: open,
  };
}

/** Whether there is no place that a reading could contradict: a picture that is lost waits for just this reading. */
function isPlaceOpen(before: Estimate, reading: Reading): boolean {
  const { needleDots, flag, dmeNm } = reading;
  const isRadialRead = needleDots === 0 && flag !== 'off';
  return before.isLost && isRadialRead && (before.scene.dme === null || dmeNm !== undefined);
}

/** Whether the place is to be set by this reading alone. */
function isToPlace(before: Estimate, interval: Interval, reading: Reading): boolean {
  if (!before.isPlaced || interval.durationS > LONGEST_GAP_S) return true;
  // A TO right after a FROM that nothing has proven: the FROM was the slip.
  return reading.flag === 'to' && !before.openBearing && isFromUnproven(before);
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
    openBearing: null,
  };
  if (reading.flag === 'off' && reading.dmeNm === undefined) {
    return { ...flags, ...unseen, belief: before.belief, isPlaced: false, takenIn: 0 };
  }
  const pieces = openPieces(before.belief, scene, reading);
  const place = placeFromReading(before.belief, scene, reading);
  return {
    ...flags,
    ...unseen,
    belief: (pieces && joined(pieces)) ?? takeIn(place, scene, reading, FITS),
    isPlaced: true,
    takenIn: 1,
    openBearing: pieces,
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
  const from = { belief: before.belief, carryOn: interval.carryOn, readings: before.readings };
  if (before.openBearing) return watchWhileOpen(watch, from, predicted, before.scene, reading);
  const isClose = Math.exp(predicted.mean.lnRange) < WATCHED_FROM_NM;
  if (isClose || before.hasPassed || misfit.flag || isCentredByHand(before, reading)) {
    return watchCarriedOn(watch, interval.carryOn);
  }
  return watchReading(watch, from, predicted, before.scene, reading);
}
