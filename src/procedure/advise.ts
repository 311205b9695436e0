import { accept, refuse } from '../base/result.ts';
import { MS_PER_S } from '../base/units.ts';
import type { FieldProblem, Result } from '../base/result.ts';
import { checkAircraft } from '../leg/check-aircraft.ts';
import { checkLeg } from '../leg/check-leg.ts';
import type { Aircraft, Leg } from '../leg/leg.ts';
import { datedLeg } from '../leg/leg-frame.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import { ICAO_MANNER } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import { checkReading } from '../track/check-reading.ts';
import { withAnyCourse } from '../track/arc-course.ts';
import { estimate } from '../track/estimate.ts';
import type { Estimate } from '../track/estimate.ts';
import { guide } from '../track/guide.ts';
import type { Alert } from '../track/guidance.ts';
import { alertsOf } from '../track/monitor.ts';
import type { Reading } from '../track/reading.ts';
import { LONGEST_GAP_S } from '../track/tuning.ts';
import type { Wind } from '../wind/wind.ts';
import type { Advice } from './advice.ts';
import type { AnswerContext } from './answer-context.ts';
import { sayOf } from './answer.ts';
import { lineMotion } from './line-heading.ts';
import { worthAsking } from './question.ts';
import { rangeFindingOf, timedByFinding } from './range-finding.ts';
import { rounded } from './rounded.ts';
import { whyOf } from './why.ts';

/** Everything that one answer depends on. */
export interface AdviceRequest {
  readonly leg: Leg;
  readonly aircraft: Aircraft;
  readonly forecastWind?: Wind;
  /** Day of the flight (`2026-11-25`), for the magnetic variation. */
  readonly dateIso: string;
  readonly readings: readonly Reading[];
  /** False: every answer says so. Left out or null: not judged. */
  readonly identConfirmed?: boolean | null;
  readonly manner?: Manner;
}

/** What an answer depends on besides the estimate. */
export interface AdviceManner {
  /** False: every answer says so. Null: not judged. */
  readonly identConfirmed: boolean | null;
  readonly manner: Manner;
  /** The answer before, where the pilot has heard it: what has not changed is not said again. */
  readonly previous?: Advice;
  /** The leg that comes after this one, where it is known. */
  readonly next?: Leg;
}

const IDENT_ALERT: Alert = {
  kind: 'ident-not-confirmed',
  ask: 'Listen to the Morse and confirm the ident.',
};

/**
 * The answer to all readings of one leg, from nothing but the request.
 *
 * Without a reading it says which one is needed most. Refuses what `checkLeg`, `checkAircraft`,
 * `datedLeg` and `checkReading` refuse, all problems at once, with dotted field names
 * (`leg.courseDeg`, `readings.3.dmeNm`), and a wind that is none (`forecastWind.speedKt`).
 */
export function advise(request: AdviceRequest): Result<Advice> {
  const { leg, aircraft, forecastWind, dateIso, readings } = request;
  const aircraftChecked = checkAircraft(aircraft);
  const legChecked = checkLeg(leg);
  const problems = [
    ...problemsIn(legChecked),
    ...problemsIn(aircraftChecked),
    ...(forecastWind === undefined ? [] : windProblems(forecastWind)),
    ...readings.flatMap((reading, i) =>
      problemsIn(checkReading(reading, aircraft, `readings.${i}`)),
    ),
  ];
  const dated = legChecked.ok ? datedLeg(leg, dateIso) : null;
  if (dated?.ok !== true || problems.length > 0) {
    return refuse([...problems, ...(dated === null ? [] : problemsIn(dated))]);
  }
  return accept(
    adviceOf(estimate(readings, dated.value, aircraft, forecastWind), dated.value, aircraft, {
      identConfirmed: request.identConfirmed ?? null,
      manner: request.manner ?? ICAO_MANNER,
    }),
  );
}

/** The answer that an estimate leads to, with its words. */
export function adviceOf(
  known: Estimate,
  leg: DatedLeg,
  aircraft: Aircraft,
  { identConfirmed, manner, previous, next }: AdviceManner,
): Advice {
  const finding = rangeFindingOf(known);
  const guidance = timedByFinding(rounded(guide(known, leg)), finding);
  const alerts = [
    ...alertsOf(withAnyCourse(known)),
    ...(identConfirmed === false ? [IDENT_ALERT] : []),
  ];
  const reading = known.readings.at(-1) ?? null;
  const context = {
    leg,
    aircraft,
    guidance,
    alerts,
    readingCount: known.readings.length,
    flag: known.flag,
    courseSetDeg: reading?.station === undefined ? (reading?.courseSetDeg ?? null) : null,
    question: worthAsking(known, guidance),
    isHeadingRead: isHeadingRead(known),
    finding,
    ...unseen(known),
    manner,
    ...(previous === undefined ? {} : { previous }),
    ...(next === undefined ? {} : { next }),
  };
  return {
    phase: guidance.phase,
    howFar: guidance.howFar,
    whichWay: guidance.whichWay,
    estimate: guidance.seen,
    alerts,
    say: sayOf(context),
    why: whyOf({ ...context, reading, lineHeadingDeg: lineMotion(known).lineHeadingDeg }),
    nextReadingInS: guidance.nextReadingInS,
  };
}

/** After too long a gap the place was started afresh from the last reading. */
function unseen({ readings }: Estimate): Pick<AnswerContext, 'unseenS'> {
  const [before, last] = readings.slice(-2);
  if (before === undefined || last === undefined) return {};
  const unseenS = (last.atMs - before.atMs) / MS_PER_S;
  return unseenS > LONGEST_GAP_S ? { unseenS } : {};
}

/** What was carried over from another leg is known to be flown. */
function isHeadingRead({ readings, start }: Estimate): boolean {
  return start.isPlaced || readings.some((each) => each.headingDeg !== undefined);
}

function problemsIn(result: Result<unknown>): readonly FieldProblem[] {
  return result.ok ? [] : result.problem;
}

/** Strongest wind taken as meant, kt: beyond it a light aircraft is not flying by hand. */
const STRONGEST_WIND_KT = 200;

function windProblems({ fromDegTrue, speedKt }: Wind): readonly FieldProblem[] {
  const problems: FieldProblem[] = [];
  if (!(fromDegTrue >= 0 && fromDegTrue <= 360)) {
    problems.push({
      field: 'forecastWind.fromDegTrue',
      expected: 'the true direction the wind blows from, 0 to 360 degrees',
      got: String(fromDegTrue),
    });
  }
  if (!(speedKt >= 0 && speedKt <= STRONGEST_WIND_KT)) {
    problems.push({
      field: 'forecastWind.speedKt',
      expected: `a wind speed of 0 to ${STRONGEST_WIND_KT} knots`,
      got: String(speedKt),
    });
  }
  return problems;
}
