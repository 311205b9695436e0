import { turnDeg } from '../base/angle.ts';
import { airPath } from './air-path.ts';
import type { AirPath, HeadingChange } from './air-path.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import { FOLLOWS_ADVICE_DEG, REACTION_S, TURN_RATE_DEG_PER_S } from './tuning.ts';

/** What was flown through the air since a moment, and the heading held now. */
export interface Flown {
  /** In magnetic directions: to be turned into the plane. */
  readonly path: AirPath;
  readonly headingDeg: number;
}

/** The changes of heading that a plan asks for. */
export function changesOf(plan: ToldPlan | null): readonly HeadingChange[] {
  if (!plan) return [];
  const first = { atS: 0, toDeg: plan.headingDeg };
  return plan.holdS === null ? [first] : [first, { atS: plan.holdS, toDeg: plan.thenHeadingDeg }];
}

/** Read this near to the heading told, the difference is the hand's and not the pilot's intention. */
const HELD_BY_HAND_DEG = 3.5;

/** A turn that was told is flown up to this much sooner or later than foreseen, s: five deviations of the reaction. */
const TURN_OFF_S = 10;

/**
 * The told path with its last turn begun sooner or later, so that it ends on the heading read; null where that
 * heading does not lie in that turn, or the turn would be off by more than 10 s.
 *
 * A reading is often taken in the turn itself. There three degrees are a second, so the heading read tells when the
 * turn was begun, and not that another heading was chosen.
 */
function inTurn(
  fromHeadingDeg: number,
  changes: readonly HeadingChange[],
  readHeadingDeg: number,
  durationS: number,
): AirPath | null {
  const index = changes.findLastIndex(({ atS }) => atS < durationS + TURN_OFF_S);
  const last = changes[index];
  if (!last) return null;
  const before = changes.slice(0, index);
  const startDeg = airPath(fromHeadingDeg, before, last.atS + REACTION_S).endHeadingDeg;
  const whole = turnDeg(startDeg, last.toDeg);
  const sense = Math.sign(whole);
  const turned = sense * turnDeg(startDeg, readHeadingDeg);
  if (turned < -HELD_BY_HAND_DEG || turned > sense * whole + HELD_BY_HAND_DEG) return null;
  const foreseenS = last.atS + REACTION_S + Math.max(0, turned) / TURN_RATE_DEG_PER_S;
  const laterS = durationS - foreseenS;
  if (Math.abs(laterS) > TURN_OFF_S) return null;
  const moved = { ...last, atS: Math.max(0, last.atS + laterS) };
  return airPath(fromHeadingDeg, [...before, moved], durationS);
}

/**
 * What was flown in `durationS` seconds from `fromHeadingDeg`, given the plan told and the heading read at the
 * end (null: not read, then the plan is being flown).
 *
 * A heading within a turn that was told means that the turn is being flown, sooner or later than foreseen; one that
 * the plan does not explain, that the pilot turned straight to it instead.
 */
export function flown(
  fromHeadingDeg: number,
  plan: ToldPlan | null,
  readHeadingDeg: number | null,
  durationS: number,
): Flown {
  const changes = changesOf(plan);
  const told = airPath(fromHeadingDeg, changes, durationS);
  if (readHeadingDeg === null) return { path: told, headingDeg: told.endHeadingDeg };
  const off = Math.abs(turnDeg(told.endHeadingDeg, readHeadingDeg));
  if (off <= HELD_BY_HAND_DEG) return { path: told, headingDeg: told.endHeadingDeg };
  const turning = inTurn(fromHeadingDeg, changes, readHeadingDeg, durationS);
  if (turning) return { path: turning, headingDeg: readHeadingDeg };
  if (off <= FOLLOWS_ADVICE_DEG) return { path: told, headingDeg: readHeadingDeg };
  const direct = airPath(fromHeadingDeg, [{ atS: 0, toDeg: readHeadingDeg }], durationS);
  return { path: direct, headingDeg: readHeadingDeg };
}

/**
 * Whether a heading read after `durationS` seconds is one that the pilot was told, or lies in a turn that was told;
 * also a heading that is still held though another one was told.
 */
export function isExplained(
  { headingDeg, plan }: Pick<Estimate, 'headingDeg' | 'plan'>,
  readHeadingDeg: number,
  durationS: number,
): boolean {
  if (headingDeg === null) return true;
  const changes = changesOf(plan);
  const told = [headingDeg, ...changes.map(({ toDeg }) => toDeg)];
  const isNear = told.some((each) => Math.abs(turnDeg(each, readHeadingDeg)) <= FOLLOWS_ADVICE_DEG);
  return isNear || inTurn(headingDeg, changes, readHeadingDeg, durationS) !== null;
}

/** The same path with all its directions turned by an angle (magnetic into the plane). */
export function turnedBy(path: AirPath, angleDeg: number): AirPath {
  const cos = Math.cos((angleDeg * Math.PI) / 180);
  const sin = Math.sin((angleDeg * Math.PI) / 180);
  return {
    ...path,
    eastS: path.eastS * cos + path.northS * sin,
    northS: path.northS * cos - path.eastS * sin,
    endHeadingDeg: path.endHeadingDeg + angleDeg,
  };
}
