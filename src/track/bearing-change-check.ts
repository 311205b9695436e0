import { DEG_PER_RAD, turnDeg } from '../base/angle.ts';
import { MS_PER_S } from '../base/units.ts';
import { abeamTurn } from './bearing-change-offer.ts';
import type { BearingChange, RadialRead, RangeCheck } from './bearing-change-record.ts';
import { wholeHeadingDeg } from './choose-plan.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import { isRangeKnown } from './how-far.ts';
import { lnRangeSd, placeOf } from './place.ts';
import type { Reading } from './reading.ts';
import { planeFromMagneticDeg } from './scene.ts';
import type { Scene } from './scene.ts';
import { isSaturated } from './update-needle.ts';

/** A heading this near to abeam serves; this far from all that was told it was chosen by the pilot, degrees. */
const ABEAM_WITHIN_DEG = 20;
const CHOSEN_DEG = 20;
/** So far off the heading held, the check has been given up, degrees. */
const GIVEN_UP_DEG = 30;
/** The handbooks end it after 5 to 10 degrees; here also where the range is known this well (relative). */
const ENOUGH_CHANGE_DEG = 10;
const ENOUGH_RANGE_SD = 0.2;
/** A station whose radial has hardly moved by then is far away. Common practice, no source. */
const LONGEST_S = 480;

/**
 * Where the bearing-change check stands after a reading.
 *
 * `before`: the estimate before that reading; `after`: the one with it, plan and check still as they were.
 */
export function rangeCheckAfter(before: Estimate, after: Estimate, reading: Reading): RangeCheck {
  const was = before.rangeCheck;
  // A cross-bearing may give the range that was missing, but shows nothing of this station.
  if (reading.station) return was;
  switch (was.kind) {
    case 'flying':
      return wentOn(was, after, reading);
    case 'offered':
      return isBegun(before, after, reading)
        ? wentOn({ ...begunBy(reading), kind: 'flying' }, after, reading)
        : was;
    case 'none':
      return abeamTurn(after) ? { kind: 'offered', atMs: reading.atMs } : was;
    case 'ended':
    case 'done':
      return { kind: 'done' };
  }
}

/** The heading to hold while the check is flown; null: it is not. */
export function rangeCheckPlan({ rangeCheck }: Estimate): ToldPlan | null {
  if (rangeCheck.kind !== 'flying') return null;
  const { headingDeg } = rangeCheck;
  return { headingDeg, holdS: null, thenHeadingDeg: headingDeg };
}

/** The station abeam on a heading that nobody told for another reason, and the range still missing. */
function isBegun(before: Estimate, after: Estimate, { headingDeg }: Reading): boolean {
  const { belief, scene, isPlaced, isLost, hasPassed } = after;
  if (headingDeg === undefined || !isPlaced || isLost || hasPassed) return false;
  if (isRangeKnown(before.belief) || before.plan === null) return false;
  const { plan } = before;
  const told = [plan.headingDeg, plan.thenHeadingDeg];
  if (told.some((each) => Math.abs(turnDeg(each, headingDeg)) < CHOSEN_DEG)) return false;
  const planeDeg = headingDeg + planeFromMagneticDeg(scene, placeOf(belief.mean));
  const stationDeg = belief.mean.bearingRad * DEG_PER_RAD + 180;
  return Math.abs(Math.abs(turnDeg(planeDeg, stationDeg)) - 90) < ABEAM_WITHIN_DEG;
}

function begunBy({ atMs, headingDeg }: Reading): BearingChange {
  return {
    headingDeg: wholeHeadingDeg(headingDeg ?? 0),
    startedAtMs: atMs,
    first: null,
    last: null,
  };
}

function wentOn(was: RangeCheck & BearingChange, after: Estimate, reading: Reading): RangeCheck {
  const { headingDeg, atMs } = reading;
  const offDeg = headingDeg === undefined ? 0 : Math.abs(turnDeg(was.headingDeg, headingDeg));
  if (offDeg > GIVEN_UP_DEG || after.isLost || after.hasPassed) return { kind: 'done' };
  const read = radialRead(reading, after.scene);
  const first = was.first ?? read;
  const last = read ?? was.last;
  const isLong = atMs - was.startedAtMs >= LONGEST_S * MS_PER_S;
  const isOver = isLong || (first !== last && isEnough(after, changeDeg({ first, last })));
  return { ...was, kind: isOver ? 'ended' : 'flying', first, last };
}

function isEnough({ belief, doubt }: Estimate, change: number): boolean {
  if (doubt) return false;
  return change >= ENOUGH_CHANGE_DEG || lnRangeSd(belief) <= ENOUGH_RANGE_SD;
}

/** How far the radial has moved, degrees, 0 or more. */
export function changeDeg({ first, last }: Pick<BearingChange, 'first' | 'last'>): number {
  return first && last ? Math.abs(turnDeg(first.radialDeg, last.radialDeg)) : 0;
}

/** The radial that a reading shows; null with OFF and with the needle on its stop. */
function radialRead(reading: Reading, scene: Scene): RadialRead | null {
  const { flag, needleDots, courseSetDeg, atMs } = reading;
  if (flag === 'off' || needleDots === undefined || isSaturated(needleDots, scene)) return null;
  const off = needleDots * scene.degreesPerDot;
  return { radialDeg: flag === 'from' ? courseSetDeg - off : courseSetDeg + 180 + off, atMs };
}
