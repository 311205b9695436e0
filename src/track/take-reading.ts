import type { Belief } from './belief.ts';
import type { Interval } from './carry-on.ts';
import { openPieces } from './open-bearing.ts';
import { openPiecesAfter } from './weigh-open.ts';
import { SETTLED_AFTER, weigh } from './doubt.ts';
import type { Doubt, Estimate, Jump, OverStation } from './estimate-record.ts';
import { FITS, isMisfit, judge } from './judge.ts';
import type { Misfit } from './judge.ts';
import { joined } from './range-pieces.ts';
import type { Piece } from './range-pieces.ts';
import { isOnStop } from './update-needle.ts';
import { afterPassage } from './passage.ts';
import { withFlagTaken } from './flag-side.ts';
import { isFromUnproven, withFlag } from './passed.ts';
import { beganOverStation, isBegunOverStation, isOverStation } from './over-station.ts';
import type { Reading } from './reading.ts';
import { afterReset } from './reset-indicator.ts';
import { agedAir, placeFromReading } from './start-belief.ts';
import { takeIn } from './take-in.ts';
import { LONGEST_GAP_S } from './tuning.ts';
import { NOTHING_SUSPECTED } from './watch-record.ts';
import { watched } from './watched.ts';

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
  | 'overStation'
>;

/**
 * Takes in one reading: places the aircraft if it was not placed (or not seen for too long), puts a passage
 * right, weighs what does not fit, and watches for faults.
 */
export function takeReading(before: Estimate, interval: Interval, reading: Reading): Taken {
  if (isToPlace(before, interval, reading)) {
    return placed({ ...before, belief: agedAir(before.belief, interval.durationS) }, reading);
  }
  const main = interval.carryOn(before.belief);
  if (isOverStation(before, main, reading)) {
    return notedOnly(before, reading, main, { belief: before.belief, path: interval.path });
  }
  if (before.openBearing) return takenWhileOpen(before, before.openBearing, interval, reading);
  const reset = afterReset(before, interval, reading);
  if (reset) return checked(before, reset, reading);
  const { scene } = before;
  const since = before.hasPassed ? null : before.lastToAtMs;
  const flagTaken = withFlagTaken(before, interval, reading);
  const belief =
    flagTaken?.prior ?? afterPassage(main, scene, reading, since, before.start.belief) ?? main;
  const misfit = judge(belief, scene, reading);
  return isMisfit(misfit)
    ? doubted(before, interval, belief, misfit, reading)
    : fitting(before, interval, { belief, taken: flagTaken?.posterior ?? null }, reading);
}

/**
 * A reading over the station: only its flag is noted. What is believed goes on from before it by the way flown, and
 * is put right by the first reading beyond.
 */
function notedOnly(
  before: Estimate,
  reading: Reading,
  belief: Belief,
  overStation: OverStation,
): Taken {
  const { isPlaced, takenIn, doubt, watch, isLost, jump, openBearing } = before;
  return {
    ...{ isPlaced, takenIn, doubt, watch, isLost, jump, openBearing },
    ...withFlag(before, reading, false),
    belief,
    overStation,
  };
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
    overStation: null,
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
    overStation: null,
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
    overStation: null,
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
  if (isBegunOverStation(before)) return true;
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
    overStation: null,
  };
  if (reading.flag === 'off' && reading.dmeNm === undefined) {
    return { ...flags, ...unseen, belief: before.belief, isPlaced: false, takenIn: 0 };
  }
  const pieces = openPieces(before.belief, scene, reading);
  const place = placeFromReading(before.belief, scene, reading);
  const began = beganOverStation(place, scene, reading);
  if (began) {
    return {
      ...flags,
      ...unseen,
      belief: began.belief,
      isPlaced: true,
      takenIn: 0,
      overStation: began,
    };
  }
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
