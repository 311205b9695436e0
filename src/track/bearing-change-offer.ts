import { DEG_PER_RAD, asinDeg, turnDeg, wrap360 } from '../base/angle.ts';
import { acrossNmPerS, alongLine } from './along-line.ts';
import type { Belief } from './belief.ts';
import { isNearStation } from './choose-plan.ts';
import type { Estimate } from './estimate-record.ts';
import { isRangeKnown } from './how-far.ts';
import { bearingSdDeg, lnRangeSd, placeOf } from './place.ts';
import { planeFromMagneticDeg } from './scene.ts';
import type { Scene } from './scene.ts';

/** So many readings of the station without a distance, and something else has to give the range. */
const AFTER_READINGS = 3;
/** With a bearing less certain than this, or farther off the course, the course comes first, degrees. */
const GREATEST_BEARING_SD_DEG = 4;
const GREATEST_OFF_DEG = 15;
/** Off the line by more than this the turn is made towards it, degrees seen from the station. */
const TOWARDS_LINE_DEG = 1;
/** On the line a right turn is as good as a left one that is this much smaller, degrees. */
const RIGHT_PREFERRED_DEG = 20;
/** Headings are told in steps of this, degrees. */
const STEP_DEG = 5;

/** The turn that puts the station abeam. */
export interface AbeamTurn {
  readonly turn: 'left' | 'right';
  /** Magnetic, in steps of five degrees, 0 <= x < 360. */
  readonly headingDeg: number;
}

/**
 * The turn with which the timed bearing-change check would begin, where nothing else gives the range and there is
 * room for it.
 *
 * Null where the range is known (by DME, by a cross-bearing, by how the needle moves in a wind that was forecast),
 * where the station may be near, off the course, on an arc, and while a reading is in doubt.
 */
export function abeamTurn(estimate: Estimate): AbeamTurn | null {
  return isWanted(estimate) ? turnAbeam(estimate) : null;
}

function isWanted(estimate: Estimate): boolean {
  const { belief, scene, isPlaced, isLost, doubt, hasPassed, flag } = estimate;
  if (!isPlaced || isLost || doubt || hasPassed || flag === 'off' || scene.arc) return false;
  if (isRangeKnown(belief) || bearingSdDeg(belief) > GREATEST_BEARING_SD_DEG) return false;
  const isOff = Math.abs(offDeg(belief, scene)) > GREATEST_OFF_DEG;
  return !isOff && hasNoDistance(estimate) && !isMaybeNear(belief, scene);
}

/** Off the line as seen from the station, degrees, right of it positive. */
function offDeg(belief: Belief, scene: Scene): number {
  const { crossTrackNm, rangeNm } = alongLine(belief.mean, scene);
  return asinDeg(crossTrackNm / rangeNm);
}

/** The last readings of the leg's own station are without a distance. */
function hasNoDistance({ readings }: Estimate): boolean {
  const recent = readings.filter((each) => !each.station).slice(-AFTER_READINGS);
  return recent.length === AFTER_READINGS && recent.every(({ dmeNm }) => dmeNm === undefined);
}

/** Near the station, even if it is only a standard deviation nearer than believed. */
function isMaybeNear(belief: Belief, scene: Scene): boolean {
  const { mean } = belief;
  const nearer = { ...mean, lnRange: mean.lnRange - lnRangeSd(belief) };
  return isNearStation(alongLine(nearer, scene), scene);
}

/** Of the two headings abeam the one that leads back to the line; on the line the nearer one, to the right if both are near. */
function turnAbeam({ belief, scene, headingDeg }: Estimate): AbeamTurn {
  const { mean } = belief;
  const motion = alongLine(mean, scene);
  const toPlaneDeg = planeFromMagneticDeg(scene, placeOf(mean)) + mean.headingErrorDeg;
  const awayDeg = mean.bearingRad * DEG_PER_RAD - toPlaneDeg;
  const nowDeg = headingDeg ?? motion.lineHeadingDeg;
  const isOff = Math.abs(offDeg(belief, scene)) > TOWARDS_LINE_DEG;
  const costOf = (toDeg: number): number => {
    if (isOff) return acrossNmPerS(motion, toDeg) * Math.sign(motion.crossTrackNm);
    const turn = turnDeg(nowDeg, toDeg);
    return Math.abs(turn) + (turn < 0 ? RIGHT_PREFERRED_DEG : 0);
  };
  const [one, other] = [stepped(awayDeg + 90), stepped(awayDeg - 90)];
  const toDeg = costOf(one) <= costOf(other) ? one : other;
  return { headingDeg: toDeg, turn: turnDeg(nowDeg, toDeg) < 0 ? 'left' : 'right' };
}

function stepped(headingDeg: number): number {
  return wrap360(STEP_DEG * Math.round(headingDeg / STEP_DEG));
}
