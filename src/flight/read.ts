import type { FieldProblem } from '../base/result.ts';
import { isOtherCourse } from '../procedure/course-set.ts';
import type { Manner } from '../speech/numbers.ts';
import { checkReading } from '../track/check-reading.ts';
import { addReading } from '../track/estimate.ts';
import { foresee } from '../track/foresee.ts';
import type { Reading } from '../track/reading.ts';
import type { ReadingEvent, ReadingFields } from './event.ts';
import { withCourseSet } from './expected.ts';
import { answerOf, freshEstimate, legOf, onLeg, withLeg } from './flown.ts';
import type { Flown } from './flown.ts';
import type { LogLine } from './log.ts';
import type { ReadingRecord } from './state.ts';

/** The flight after a reading: completed, judged, added to the estimate and answered. */
export function readingGiven(
  flown: Flown,
  event: ReadingEvent,
  line: LogLine,
  manner: Manner,
): Flown {
  const fields = fieldsOf(line.correction ?? event);
  const reading = completed(flown, event.atMs, fields);
  const problem = line.isTakenBack ? [] : problemsOf(flown, fields, reading);
  const record: ReadingRecord = {
    eventId: event.id,
    atMs: event.atMs,
    legIndex: flown.legIndex,
    fields,
    reading,
    ...(event.text === undefined ? {} : { text: event.text }),
    isCorrected: line.correction !== null,
    isTakenBack: line.isTakenBack,
    problem,
    advice: null,
  };
  if (line.isTakenBack || problem.length > 0) return recorded(flown, record);
  const read = counted(flown, reading, manner);
  return recorded(read, { ...record, advice: read.advice });
}

function recorded(flown: Flown, record: ReadingRecord): Flown {
  return { ...flown, readings: { last: record, before: flown.readings } };
}

/** What was read, without the stamp and the sentence. */
function fieldsOf(given: ReadingFields): ReadingFields {
  const { headingDeg, courseSetDeg, needleDots, flag, dmeNm, station } = given;
  return {
    ...(headingDeg === undefined ? {} : { headingDeg }),
    ...(courseSetDeg === undefined ? {} : { courseSetDeg }),
    ...(needleDots === undefined ? {} : { needleDots }),
    ...(flag === undefined ? {} : { flag }),
    ...(dmeNm === undefined ? {} : { dmeNm }),
    ...(station === undefined ? {} : { station }),
  };
}

/**
 * The flag stays as it was read last on the leg's course, at first by the direction of the leg. A course set
 * that was not read is the leg's: after a reading with another one the answer has told to set it back.
 */
function completed(flown: Flown, atMs: number, fields: ReadingFields): Reading {
  const leg = legOf(flown);
  const onArc = leg?.arc === undefined ? null : arcPanel(flown, atMs, fields.courseSetDeg);
  if (onArc !== null) return { atMs, ...onArc, ...fields };
  return {
    atMs,
    ...fields,
    courseSetDeg: fields.courseSetDeg ?? leg?.courseDeg ?? 0,
    flag: fields.flag ?? flown.flag ?? leg?.direction ?? 'off',
  };
}

/**
 * On an arc the OBS stays as it was set last, and a flag that was not read is the one expected. Null before
 * anything tells where the aircraft is.
 */
function arcPanel(
  { estimate }: Flown,
  atMs: number,
  courseReadDeg: number | undefined,
): Pick<Reading, 'courseSetDeg' | 'flag'> | null {
  if (estimate?.isPlaced !== true) return null;
  const last = estimate.readings.findLast((each) => each.station === undefined);
  const courseSetDeg = courseReadDeg ?? last?.courseSetDeg ?? estimate.leg.leg.courseDeg;
  const set = withCourseSet(estimate, courseSetDeg);
  return { courseSetDeg, flag: foresee(set, estimate.leg, atMs).flag };
}

function problemsOf(
  flown: Flown,
  fields: ReadingFields,
  reading: Reading,
): readonly FieldProblem[] {
  if (flown.plan === null) {
    return [{ field: 'plan', expected: 'a leg to fly before the first reading', got: 'none' }];
  }
  if (flown.dated === null) {
    const none = { field: 'legs', expected: 'at least one leg', got: 'none' };
    return flown.legProblem.length > 0 ? flown.legProblem : [none];
  }
  if (Object.keys(fields).length === 0) {
    return [{ field: 'reading', expected: 'a needle, flag, distance or heading', got: 'nothing' }];
  }
  const checked = checkReading(reading, flown.plan.aircraft);
  return checked.ok ? [] : checked.problem;
}

/** A reading that counts: the estimate with it, the station passage if it shows one, and the answer. */
function counted(flown: Flown, reading: Reading, manner: Manner): Flown {
  const { plan, dated, legIndex } = flown;
  if (plan === null || dated === null) return flown;
  const known = flown.estimate ?? freshEstimate(plan, dated, flown.carried);
  const isOnCourse =
    reading.station === undefined && !isOtherCourse(reading.courseSetDeg, dated.leg);
  const read: Flown = {
    ...flown,
    estimate: addReading(known, reading),
    flag: isOnCourse ? reading.flag : flown.flag,
    hasJustPassed: false,
  };
  const started =
    flown.legs[legIndex]?.startedAtMs === null
      ? withLeg(read, legIndex, { startedAtMs: reading.atMs })
      : read;
  const after = isPassage(started, reading) ? passed(started, reading.atMs) : started;
  return { ...after, advice: answerOf(after, manner, flown.advice ?? undefined) };
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

function passed(flown: Flown, atMs: number): Flown {
  const noted = withLeg(flown, flown.legIndex, { passageAtMs: atMs });
  const next = flown.legIndex + 1;
  if (flown.plan?.legs[next] === undefined) return noted;
  return { ...onLeg(noted, next, atMs), hasJustPassed: true };
}
