import { refuse, type FieldProblem, type Result } from '../../src/base/result.ts';
import { readNumber } from '../../src/earth/typed-angle.ts';
import { checkAircraft } from '../../src/leg/check-aircraft.ts';
import { trueAirspeedKt, type AirspeedRead } from '../../src/wind/airspeed.ts';
import type { NamedAircraft } from '../settings/settings-record.ts';

/** An aircraft as typed: texts, until they are read. */
export interface AircraftDraft {
  readonly name: string;
  /** Whether the true airspeed is typed or worked out from what the panel shows. */
  readonly by: 'true' | 'calibrated';
  readonly speed: string;
  readonly calibrated: string;
  readonly pressureAltitude: string;
  /** Empty: standard. */
  readonly temperature: string;
  readonly perDot: string;
  readonly dots: string;
}

const emptyDraft: AircraftDraft = {
  name: '',
  by: 'true',
  speed: '',
  calibrated: '',
  pressureAltitude: '',
  temperature: '',
  perDot: '2',
  dots: '5',
};

/** The draft of an aircraft to be changed, or of a new one. */
export function draftOf(before: NamedAircraft | undefined): AircraftDraft {
  if (before === undefined) return emptyDraft;
  const { airspeedFrom: from, ...typed } = before;
  return {
    ...emptyDraft,
    name: typed.name,
    speed: String(typed.trueAirspeedKt),
    perDot: String(typed.degreesPerDot),
    dots: String(typed.dotsFullScale),
    ...(from === undefined
      ? {}
      : {
          by: 'calibrated',
          calibrated: String(from.calibratedAirspeedKt),
          pressureAltitude: String(from.pressureAltitudeFt),
          temperature: from.temperatureC === undefined ? '' : String(from.temperatureC),
        }),
  };
}

/** The true airspeed worked out from what is typed so far, whole knots; refuses by the names of the fields. */
export function workedOutKt(draft: AircraftDraft): Result<number> {
  const read = trueAirspeedKt(airspeedFrom(draft));
  if (read.ok) return { ok: true, value: Math.round(read.value) };
  return refuse(read.problem.map((each) => ({ ...each, field: `aircraft.${each.field}` })));
}

function airspeedFrom({ calibrated, pressureAltitude, temperature }: AircraftDraft): AirspeedRead {
  return {
    calibratedAirspeedKt: readNumber(calibrated),
    pressureAltitudeFt: readNumber(pressureAltitude),
    ...(temperature.trim() === '' ? {} : { temperatureC: readNumber(temperature) }),
  };
}

/** Reads the whole aircraft; refuses with every field that cannot be read, by its name on the page. */
export function readAircraft(draft: AircraftDraft): Result<NamedAircraft> {
  const isTyped = draft.by === 'true';
  const speed: Result<number> = isTyped
    ? { ok: true, value: readNumber(draft.speed) }
    : workedOutKt(draft);
  const checked = checkAircraft({
    trueAirspeedKt: speed.ok ? speed.value : 100,
    degreesPerDot: readNumber(draft.perDot),
    dotsFullScale: readNumber(draft.dots),
  });
  const problems = [...problemsIn(speed), ...problemsIn(checked).map(isTyped ? same : onPanel)];
  if (!checked.ok || problems.length > 0) return refuse(problems);
  return {
    ok: true,
    value: {
      name: draft.name.trim(),
      ...checked.value,
      ...(isTyped ? {} : { airspeedFrom: airspeedFrom(draft) }),
    },
  };
}

const same = (problem: FieldProblem): FieldProblem => problem;

/** A true airspeed out of range that was worked out is mended where it came from. */
function onPanel(problem: FieldProblem): FieldProblem {
  return problem.field === 'aircraft.trueAirspeedKt'
    ? { ...problem, field: 'aircraft.calibratedAirspeedKt' }
    : problem;
}

function problemsIn(result: Result<unknown>): readonly FieldProblem[] {
  return result.ok ? [] : result.problem;
}
