import { isOtherCourse } from '../../src/procedure/course-set.ts';
import type { ReadingFields } from '../../src/flight/event.ts';
import { followsRadials } from '../../src/flight/expected.ts';
import type { FlightState, ReadingRecord } from '../../src/flight/state.ts';
import type { Leg } from '../../src/leg/leg.ts';
import type { Foresight } from '../../src/track/foresight.ts';
import type { Flag } from '../../src/track/reading.ts';

/** What the reading panel shows. Null: not read, or nothing to expect. */
export interface PanelValues {
  readonly headingDeg: number | null;
  readonly courseSetDeg: number;
  readonly needleDots: number | null;
  readonly flag: Flag;
  readonly dmeNm: number | null;
}

/** What the panel is filled in with, and whether it may be given as it stands. */
export interface ExpectedPanel extends PanelValues {
  /** A needle or a distance is foreseen and nothing speaks against it: there is something to confirm. */
  readonly isForeseen: boolean;
  /** The flag should have changed by now, or was OFF. Only the pilot can say what it shows: it must be read. */
  readonly mustReadFlag: boolean;
}

/** The readings of the leg being flown that count, newest last. */
function readingsOf({ readings, legIndex }: FlightState): readonly ReadingRecord[] {
  return readings.filter(
    (each) => !each.isTakenBack && each.problem.length === 0 && each.legIndex === legIndex,
  );
}

/** Those of them with its own station tuned. */
function ownReadingsOf(state: FlightState): readonly ReadingRecord[] {
  return readingsOf(state).filter(({ reading }) => reading.station === undefined);
}

/** Those of these with the leg's own course set. */
function onCourseOf(state: FlightState, leg: Leg | null): readonly ReadingRecord[] {
  return ownReadingsOf(state).filter(
    ({ reading }) => leg === null || !isOtherCourse(reading.courseSetDeg, leg),
  );
}

/**
 * The flag is filled in as it was last read, at first by the direction of the leg; it is never foreseen: a flip
 * that nobody saw would count as the station passage. OFF does not last.
 */
function lastFlag(readings: readonly ReadingRecord[], leg: Leg | null): Flag {
  const last = readings.findLast(({ reading }) => reading.flag !== 'off');
  return last?.reading.flag ?? leg?.direction ?? 'to';
}

/** Something does not fit: a tap that confirms what is expected would make the doubt go away unchecked. */
function isDoubted({ advice }: FlightState): boolean {
  return advice?.alerts.some(({ kind }) => kind !== 'ident-not-confirmed') ?? false;
}

/** What to fill the panel in with at this moment. */
export function expectedPanel(
  state: FlightState,
  leg: Leg | null,
  foresight: Foresight | null,
): ExpectedPanel {
  // Where the OBS follows the radials it stays where it was set.
  const isFree = state.estimate !== null && followsRadials(state.estimate);
  const readings = isFree ? ownReadingsOf(state) : onCourseOf(state, leg);
  // After a reading with another course set the answer has told to set the leg's again.
  const courseSetDeg = readings.at(-1)?.reading.courseSetDeg ?? leg?.courseDeg ?? 0;
  const flag = lastFlag(readings, leg);
  if (foresight === null) {
    const nothing = { headingDeg: null, needleDots: null, dmeNm: null };
    return { ...nothing, courseSetDeg, flag, isForeseen: false, mustReadFlag: false };
  }
  const wasOff = readings.at(-1)?.reading.flag === 'off';
  const mustReadFlag = foresight.flag !== flag || wasOff;
  return { courseSetDeg, flag, mustReadFlag, ...foreseen(foresight, isDoubted(state)) };
}

/** The figures foreseen, in the steps of the panel. */
function foreseen({ headingDeg, needleDots, dmeNm }: Foresight, isInDoubt: boolean) {
  return {
    headingDeg: Math.round(headingDeg),
    needleDots: needleDots === null ? null : Math.round(needleDots * 2) / 2,
    dmeNm: dmeNm === null ? null : Math.round(dmeNm * 10) / 10,
    isForeseen: (needleDots !== null || dmeNm !== null) && !isInDoubt,
  };
}

/** A reading given before, as the panel shows it. */
export function panelOf({ fields, reading }: ReadingRecord): PanelValues {
  return {
    headingDeg: fields.headingDeg ?? null,
    courseSetDeg: reading.courseSetDeg,
    needleDots: fields.needleDots ?? null,
    flag: reading.flag,
    dmeNm: fields.dmeNm ?? null,
  };
}

/** The fields of the reading that the panel shows; what was not read is left out. */
export function fieldsOf(shown: PanelValues): ReadingFields {
  return {
    courseSetDeg: shown.courseSetDeg,
    flag: shown.flag,
    ...(shown.headingDeg === null ? {} : { headingDeg: shown.headingDeg % 360 }),
    ...(shown.needleDots === null || shown.flag === 'off' ? {} : { needleDots: shown.needleDots }),
    ...(shown.dmeNm === null ? {} : { dmeNm: shown.dmeNm }),
  };
}
