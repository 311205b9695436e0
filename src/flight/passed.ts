import { turnDeg } from '../base/angle.ts';
import { MS_PER_S } from '../base/units.ts';
import type { Leg } from '../leg/leg.ts';
import type { Advice } from '../procedure/advice.ts';
import { isSameTuning } from '../procedure/checklist.ts';
import type { Reading } from '../track/reading.ts';
import type { ReadingFields } from './event.ts';
import { onLeg, withLeg } from './flown.ts';
import type { Flown } from './flown.ts';

/** A TO takes a passage back only so soon after it, s: later it is about something else. */
const TAKEN_BACK_WITHIN_S = 180;
/** An OBS set within this of the course that was flown shows TO only before the station. */
const ALONG_COURSE_DEG = 60;

/** The flight after a reading that is already counted: on the next leg if it shows the station passage. */
export function withPassage(flown: Flown, reading: Reading): Flown {
  if (isUndoneOnLeg(flown)) return withLeg(flown, flown.legIndex, { passageAtMs: null });
  if (!isPassage(flown, reading)) return flown;
  const { legIndex, legs, plan } = flown;
  const noted = withLeg(flown, legIndex, { passageAtMs: reading.atMs });
  const next = legIndex + 1;
  if (plan?.legs[next] === undefined) return noted;
  const passedFrom = {
    flown,
    atMs: reading.atMs,
    nextStartedAtMs: legs[next]?.startedAtMs ?? null,
  };
  return { ...onLeg(noted, next, reading.atMs), hasJustPassed: true, passedFrom };
}

/** Whether this reading is the first that shows the station behind, on a leg that ends over it. */
function isPassage({ dated, estimate, legs, legIndex }: Flown, reading: Reading): boolean {
  return (
    dated?.endGroundNm === 0 &&
    estimate?.hasPassed === true &&
    reading.flag === 'from' &&
    legs[legIndex]?.passageAtMs === null
  );
}

/** On a last leg a TO read again shows that the station is not behind after all. */
function isUndoneOnLeg({ dated, estimate, legs, legIndex }: Flown): boolean {
  return (
    dated?.endGroundNm === 0 &&
    estimate?.hasPassed === false &&
    typeof legs[legIndex]?.passageAtMs === 'number'
  );
}

/**
 * The flight back on the leg whose passage a TO shows to have been none; null: the passage stands.
 *
 * Only a TO that was read, soon, before any FROM on the leg out of the same station, and where the OBS would
 * show FROM beyond it.
 */
export function beforePassage(flown: Flown, fields: ReadingFields, atMs: number): Flown | null {
  const { passedFrom, plan, legIndex, legs } = flown;
  const leg = plan?.legs[legIndex];
  const passed = plan?.legs[legIndex - 1];
  if (passedFrom === null || leg === undefined || passed === undefined) return null;
  if (atMs - passedFrom.atMs > TAKEN_BACK_WITHIN_S * MS_PER_S) return null;
  if (!deniesPassage(fields, leg, passed)) return null;
  const at = placeOf(passedFrom.flown);
  const back = { ...flown, ...at, legs, passedFrom: null, hasJustPassed: false, advice: null };
  const undone = withLeg(back, legIndex - 1, { passageAtMs: null });
  return withLeg(undone, legIndex, { startedAtMs: passedFrom.nextStartedAtMs });
}

function deniesPassage(
  { flag, station, courseSetDeg }: ReadingFields,
  leg: Leg,
  passed: Leg,
): boolean {
  if (flag !== 'to' || station !== undefined) return false;
  if (!isSameTuning(leg, passed) || leg.direction !== 'from' || leg.arc !== undefined) return false;
  return Math.abs(turnDeg(courseSetDeg ?? leg.courseDeg, passed.courseDeg)) <= ALONG_COURSE_DEG;
}

/** Where a flight is, apart from its lists. */
function placeOf({ legIndex, dated, legProblem, estimate, carried, flag }: Flown): Partial<Flown> {
  return { legIndex, dated, legProblem, estimate, carried, flag, offAtMs: null };
}

/** Whether a reading has taken the passage of the leg being flown back. */
export function isPassageUndone({ legs, legIndex }: Flown, after: Flown): boolean {
  return (
    typeof legs[legIndex]?.passageAtMs === 'number' && after.legs[legIndex]?.passageAtMs === null
  );
}

/** The answer where a passage was taken back: that comes first. */
export function notPassedAdviceOf(advice: Advice | null): Advice | null {
  return advice && { ...advice, say: `Not past the station yet. ${advice.say}` };
}
