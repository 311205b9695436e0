import { MS_PER_S } from '../base/units.ts';
import type { FieldProblem } from '../base/result.ts';
import { isOtherCourse } from '../procedure/course-set.ts';
import type { Manner } from '../speech/numbers.ts';
import { checkReading } from '../track/check-reading.ts';
import { isAboutArc } from '../track/arc-course.ts';
import { addReading } from '../track/estimate.ts';
import { foresee } from '../track/foresee.ts';
import type { Flag, Reading } from '../track/reading.ts';
import type { ReadingEvent, ReadingFields } from './event.ts';
import { withCourseSet } from './expected.ts';
import { answerOf, freshEstimate, legOf, withLeg } from './flown.ts';
import type { Flown } from './flown.ts';
import type { LogLine } from './log.ts';
import { beforePassage, isPassageUndone, notPassedAdviceOf, withPassage } from './passed.ts';
import type { ReadingRecord } from './state.ts';

/** The flight after a reading: completed, judged, added to the estimate and answered. */
export function readingGiven(
  given: Flown,
  event: ReadingEvent,
  line: LogLine,
  manner: Manner,
): Flown {
  const fields = fieldsOf(line.correction ?? event);
  const back = line.isTakenBack ? null : beforePassage(given, fields, event.atMs);
  const flown = back ?? given;
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
  if (line.isTakenBack || problem.length > 0) return recorded(given, record);
  const read = counted(flown, reading, fields, manner);
  const isUndone = back !== null || isPassageUndone(flown, read);
  const advice = isUndone ? notPassedAdviceOf(read.advice) : read.advice;
  return recorded({ ...read, advice }, { ...record, advice });
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

/** An OFF is still meant so long after it by what is said of anything but the needle, s. */
const OFF_STANDS_S = 30;

/**
 * The flag stays as it was read last on the leg's course, at first by the direction of the leg; OFF only for
 * what is said right after it, and never for a needle. A course set that was not read is the leg's: after a
 * reading with another one the answer has told to set it back.
 */
function completed(flown: Flown, atMs: number, fields: ReadingFields): Reading {
  const leg = legOf(flown);
  const onArc = arcPanel(flown, atMs, fields.courseSetDeg);
  if (onArc !== null) return { atMs, ...onArc, ...fields };
  return {
    atMs,
    ...fields,
    courseSetDeg: fields.courseSetDeg ?? leg?.courseDeg ?? 0,
    flag: fields.flag ?? flagStanding(flown, atMs, fields) ?? leg?.direction ?? 'off',
  };
}

function flagStanding({ flag, offAtMs }: Flown, atMs: number, fields: ReadingFields): Flag | null {
  const isOff = offAtMs !== null && atMs - offAtMs <= OFF_STANDS_S * MS_PER_S;
  return isOff && fields.needleDots === undefined ? 'off' : flag;
}

/**
 * About an arc the OBS stays as it was set last, and a flag that was not read is the one expected. Null on any
 * other leg and before the turn onto the arc.
 */
function arcPanel(
  { estimate }: Flown,
  atMs: number,
  courseReadDeg: number | undefined,
): Pick<Reading, 'courseSetDeg' | 'flag'> | null {
  if (estimate === null || !isAboutArc(estimate)) return null;
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
function counted(flown: Flown, reading: Reading, fields: ReadingFields, manner: Manner): Flown {
  const { plan, dated, legIndex, passedFrom } = flown;
  if (plan === null || dated === null) return flown;
  const known = flown.estimate ?? freshEstimate(plan, legIndex, dated, flown.carried);
  const read: Flown = {
    ...flown,
    ...flagRead(flown, reading, fields),
    estimate: addReading(known, reading),
    hasJustPassed: false,
    passedFrom: fields.flag === 'from' ? null : passedFrom,
  };
  const started =
    flown.legs[legIndex]?.startedAtMs === null
      ? withLeg(read, legIndex, { startedAtMs: reading.atMs })
      : read;
  const after = withPassage(started, reading);
  return { ...after, advice: answerOf(after, manner, flown.advice ?? undefined) };
}

/** What is kept of the flag: only where the leg's own course was set. */
function flagRead(
  { dated, flag, offAtMs }: Flown,
  reading: Reading,
  fields: ReadingFields,
): Pick<Flown, 'flag' | 'offAtMs'> {
  const isOwn = reading.station === undefined && dated !== null;
  if (!isOwn || isOtherCourse(reading.courseSetDeg, dated.leg)) return { flag, offAtMs };
  if (reading.flag !== 'off') return { flag: reading.flag, offAtMs: null };
  return { flag, offAtMs: fields.flag === 'off' ? reading.atMs : offAtMs };
}
