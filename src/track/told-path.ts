import { turnDeg } from '../base/angle.ts';
import { airPath } from './air-path.ts';
import type { AirPath, HeadingChange } from './air-path.ts';
import type { ToldPlan } from './estimate-record.ts';
import { FOLLOWS_ADVICE_DEG } from './tuning.ts';

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

/**
 * What was flown in `durationS` seconds from `fromHeadingDeg`, given the plan told and the heading read at the
 * end (null: not read, then the plan is being flown).
 *
 * A heading that the plan does not explain means that the pilot turned straight to it instead.
 */
export function flown(
  fromHeadingDeg: number,
  plan: ToldPlan | null,
  readHeadingDeg: number | null,
  durationS: number,
): Flown {
  const told = airPath(fromHeadingDeg, changesOf(plan), durationS);
  if (readHeadingDeg === null) return { path: told, headingDeg: told.endHeadingDeg };
  const off = Math.abs(turnDeg(told.endHeadingDeg, readHeadingDeg));
  if (off <= HELD_BY_HAND_DEG) return { path: told, headingDeg: told.endHeadingDeg };
  if (off <= FOLLOWS_ADVICE_DEG) return { path: told, headingDeg: readHeadingDeg };
  const direct = airPath(fromHeadingDeg, [{ atS: 0, toDeg: readHeadingDeg }], durationS);
  return { path: direct, headingDeg: readHeadingDeg };
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
