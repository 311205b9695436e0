import type { Belief } from './belief.ts';
import { HEADING_ERROR, STATE_SIZE, WIND_EAST, WIND_NORTH } from './belief.ts';
import type { Doubt } from './estimate-record.ts';
import { FITS, isMisfit, judge } from './judge.ts';
import type { Misfit } from './judge.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { placeFromReading } from './start-belief.ts';
import { takeIn } from './take-in.ts';

/** A place that jumped may come from a wind or a direction indicator that jumped: widen those. Tuned by simulation. */
const WIND_JUMP_SD_KT = 8;
const HEADING_JUMP_SD_DEG = 4;
/** A DME that differs by less than this from the last shows the same distance: it is shown in tenths. */
const SAME_DME_NM = 0.06;
/** Before this many readings the start itself is as doubtful as a reading that contradicts it. Tuned by simulation. */
export const SETTLED_AFTER = 3;
/** Once settled, this many readings must agree with a jump before it is believed. Tuned by simulation. */
const AGREE_TO_JUMP = 3;
/** Flags that contradict this often in a row, with nothing else to go by, end the trust in it. Tuned likewise. */
const FLAGS_END_TRUST = 3;

/** What would be believed if the place in a reading is right and everything before it wrong. */
function startedAfresh(belief: Belief, scene: Scene, reading: Reading): Belief {
  const covariance = [...belief.covariance];
  const widen = (index: number, sd: number): void => {
    const at = index * STATE_SIZE + index;
    covariance[at] = (covariance[at] ?? 0) + sd ** 2;
  };
  widen(WIND_EAST, WIND_JUMP_SD_KT);
  widen(WIND_NORTH, WIND_JUMP_SD_KT);
  widen(HEADING_ERROR, HEADING_JUMP_SD_DEG);
  const placed = placeFromReading({ mean: belief.mean, covariance }, scene, reading);
  return takeIn(placed, scene, reading, FITS);
}

/** What becomes of the belief and the doubt after a reading that does not fit. */
export interface Verdict {
  readonly belief: Belief;
  readonly doubt: Doubt | null;
  /** The readings in doubt were right: the place is now theirs. */
  readonly isConfirmed: boolean;
  /** Nothing fits: the place was started afresh from this reading alone. */
  readonly isLost: boolean;
}

/** The other belief after this reading, and in how many readings in a row it has been agreed with. */
function otherwiseAfter(
  before: Doubt | null,
  belief: Belief,
  scene: Scene,
  reading: Reading,
): { otherwise: Belief; agreed: number } {
  if (before) {
    const misfit = judge(before.otherwise, scene, reading);
    if (!isMisfit(misfit)) {
      return {
        otherwise: takeIn(before.otherwise, scene, reading, misfit),
        agreed: before.agreed + 1,
      };
    }
  }
  return { otherwise: startedAfresh(belief, scene, reading), agreed: 0 };
}

function isSameDme(before: Doubt | null, lastDmeNm: number | null, reading: Reading): boolean {
  if (reading.dmeNm === undefined || lastDmeNm === null) return false;
  const isStill = Math.abs(reading.dmeNm - lastDmeNm) < SAME_DME_NM;
  return isStill && (before === null || before.isDmeStill);
}

/** How many agreeing readings it takes to believe the other place. */
function agreeingNeeded(misfit: Misfit, takenIn: number): number {
  if (takenIn < SETTLED_AFTER) return 1;
  return misfit.needle && !misfit.dme && !misfit.flag ? 1 : AGREE_TO_JUMP;
}

/** Whether readings that agree with nothing mean that the place is lost. */
function isNothingLeft(doubt: Doubt, scene: Scene): boolean {
  if (doubt.agreed > 0 || doubt.count < 2) return false;
  const { needle, dme, flag } = doubt.misfit;
  // One instrument alone can be wrong for long: the other one still tells.
  if (dme && !needle && !flag) return false;
  if (flag) return doubt.count >= FLAGS_END_TRUST && (dme || !scene.dme);
  return true;
}

/**
 * Weighs a reading that does not fit (`misfit`) against what is believed (`belief`, carried on to its time).
 *
 * The parts that do not fit are kept out. Beside it goes what would be believed if they are right; when later
 * readings agree with that, it is taken over; when two in a row agree with neither, the place is lost and starts
 * afresh from the last of them.
 */
export function weigh(
  belief: Belief,
  scene: Scene,
  reading: Reading,
  misfit: Misfit,
  before: {
    readonly doubt: Doubt | null;
    readonly takenIn: number;
    readonly lastDmeNm: number | null;
  },
): Verdict {
  const { otherwise, agreed } = otherwiseAfter(before.doubt, belief, scene, reading);
  const doubt: Doubt = {
    misfit,
    reading,
    count: (before.doubt?.count ?? 0) + 1,
    otherwise,
    agreed,
    isDmeStill: isSameDme(before.doubt, before.lastDmeNm, reading),
  };
  if (agreed >= agreeingNeeded(misfit, before.takenIn)) {
    return { belief: otherwise, doubt: null, isConfirmed: true, isLost: false };
  }
  if (isNothingLeft(doubt, scene)) {
    return { belief: otherwise, doubt: null, isConfirmed: false, isLost: true };
  }
  return {
    belief: takeIn(belief, scene, reading, misfit),
    doubt,
    isConfirmed: false,
    isLost: false,
  };
}
