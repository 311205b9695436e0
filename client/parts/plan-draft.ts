import { effect, signal, type Signal } from '@preact/signals';
import { reciprocalDeg } from '../../src/base/angle.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../src/base/result.ts';
import { checkAircraft } from '../../src/leg/check-aircraft.ts';
import { checkLeg } from '../../src/leg/check-leg.ts';
import { datedLeg } from '../../src/leg/leg-frame.ts';
import type { Leg } from '../../src/leg/leg.ts';
import { checkWind } from '../../src/wind/check-wind.ts';
import type { Wind } from '../../src/wind/wind.ts';
import type { NamedAircraft } from '../settings/settings.ts';
import type { PlanFields } from '../store/flight-store.ts';
import { threeFigures } from './figures.ts';
import { readAngle, readNumber } from '../../src/earth/typed-angle.ts';

/** One leg as typed: texts, until they are read. */
export interface LegDraft {
  readonly ident: string;
  readonly frequency: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly elevation: string;
  readonly declination: string;
  readonly dme: 'yes' | 'no';
  /** To the station, from it, or about it. */
  readonly direction: 'to' | 'from' | 'arc';
  readonly course: string;
  readonly altitude: string;
  readonly endDme: string;
  /** How the course is flown while the arc is joined, and the arc. */
  readonly arcJoined: 'to' | 'from';
  readonly arcDme: string;
  readonly arcRadial: string;
  readonly arcTurn: 'clockwise' | 'anticlockwise';
}

/** A plan as typed. */
export interface PlanDraft {
  readonly name: string;
  readonly date: string;
  readonly windFrom: string;
  readonly windSpeed: string;
  readonly legs: readonly LegDraft[];
}

const emptyLeg: LegDraft = {
  ident: '',
  frequency: '',
  latitude: '',
  longitude: '',
  elevation: '',
  declination: '',
  dme: 'yes',
  direction: 'to',
  course: '',
  altitude: '',
  endDme: '',
  arcJoined: 'to',
  arcDme: '',
  arcRadial: '',
  arcTurn: 'clockwise',
};

/** A plan with nothing in it but the date. */
export function emptyPlan(dateIso: string): PlanDraft {
  return { name: '', date: dateIso, windFrom: '', windSpeed: '', legs: [emptyLeg] };
}

const PLACE = 'spoken-radial.plan-draft';

/** The plan being typed, kept on this device letter by letter: leaving the page loses nothing. */
export function keptDraft(todayIso: string): Signal<PlanDraft> {
  const empty = emptyPlan(todayIso);
  const draft = signal<PlanDraft>({ ...empty, ...(storedDraft() ?? {}) });
  effect(() => {
    try {
      localStorage.setItem(PLACE, JSON.stringify(draft.value));
    } catch {
      // A browser that keeps nothing: what is typed lasts as long as the page.
    }
  });
  return draft;
}

/** Forgets the draft, once the flight has been made from it. */
export function forgetDraft(): void {
  localStorage.removeItem(PLACE);
}

function storedDraft(): Partial<PlanDraft> | null {
  try {
    const stored = JSON.parse(localStorage.getItem(PLACE) ?? 'null') as Partial<PlanDraft> | null;
    const legs: readonly Partial<LegDraft>[] = stored?.legs ?? [];
    if (stored === null || legs.length === 0) return null;
    return { ...stored, legs: legs.map((leg) => ({ ...emptyLeg, ...leg })) };
  } catch {
    return null;
  }
}

/** The leg that most often follows: the same station, left again the other way; after an arc inbound. */
export function legAfter(before: LegDraft | undefined): LegDraft {
  if (before === undefined) return emptyLeg;
  if (before.direction === 'arc') return { ...before, direction: 'to', ...inboundFrom(before) };
  const direction = before.direction === 'to' ? 'from' : 'to';
  return { ...before, direction, course: '', endDme: '' };
}

/** Inbound on the radial where an arc ends. */
function inboundFrom({ arcRadial }: LegDraft): Pick<LegDraft, 'course' | 'endDme'> {
  const radialDeg = readNumber(arcRadial);
  const course = Number.isNaN(radialDeg) ? '' : threeFigures(reciprocalDeg(radialDeg));
  return { course, endDme: '' };
}

/** Reads the whole plan; refuses with every field that cannot be read, by its name on the page. */
export function readPlan(draft: PlanDraft, aircraft: NamedAircraft): Result<PlanFields> {
  const legs = draft.legs.map((leg, index) => readLeg(leg, `legs.${index}`, draft.date));
  const wind = readWind(draft);
  const { name, trueAirspeedKt, degreesPerDot, dotsFullScale } = aircraft;
  const checkedAircraft = checkAircraft({ trueAirspeedKt, degreesPerDot, dotsFullScale });
  const problems = [...legs, wind, checkedAircraft].flatMap((each) =>
    each.ok ? [] : each.problem,
  );
  if (problems.length > 0 || !wind.ok || !checkedAircraft.ok) return refuse(problems);
  const read = legs.flatMap((leg) => (leg.ok ? [leg.value] : []));
  return accept({
    name:
      draft.name.trim() === ''
        ? `${[...new Set(read.map((leg) => leg.station.ident))].join(', ')} with ${name}`
        : draft.name.trim(),
    dateIso: draft.date,
    aircraft: checkedAircraft.value,
    legs: read,
    ...(wind.value === null ? {} : { forecastWind: wind.value }),
  });
}

function readWind({ windFrom, windSpeed }: PlanDraft): Result<Wind | null> {
  if (windFrom.trim() === '' && windSpeed.trim() === '') return accept(null);
  return checkWind({ fromDegTrue: readNumber(windFrom), speedKt: readNumber(windSpeed) });
}

function readLeg(draft: LegDraft, field: string, dateIso: string): Result<Leg> {
  const angles = {
    latitudeDeg: readAngle(draft.latitude, 'latitude'),
    longitudeDeg: readAngle(draft.longitude, 'longitude'),
    declinationDegEast: readAngle(draft.declination, 'declination'),
  };
  const angleProblems = Object.entries(angles).flatMap(([name, read]): FieldProblem[] =>
    read.ok ? [] : [{ field: `${field}.station.${name}`, expected: read.problem, got: '' }],
  );
  const leg: Leg = {
    station: {
      ident: draft.ident.trim(),
      frequencyMhz: readNumber(draft.frequency),
      latitudeDeg: angles.latitudeDeg.ok ? angles.latitudeDeg.value : 0,
      longitudeDeg: angles.longitudeDeg.ok ? angles.longitudeDeg.value : 0,
      elevationFt: readNumber(draft.elevation),
      declinationDegEast: angles.declinationDegEast.ok ? angles.declinationDegEast.value : 0,
      hasDme: draft.dme === 'yes',
    },
    direction: draft.direction === 'arc' ? draft.arcJoined : draft.direction,
    courseDeg: readNumber(draft.course),
    altitudeFt: readNumber(draft.altitude),
    ...endOf(draft),
  };
  const checked = checkLeg(leg, field);
  if (!checked.ok || angleProblems.length > 0) {
    return refuse([...angleProblems, ...(checked.ok ? [] : checked.problem)]);
  }
  const dated = datedLeg(checked.value, dateIso);
  return dated.ok ? checked : refuse(dated.problem);
}

/** Where the leg ends: on a radial about the station, at a distance, or with nothing said. */
function endOf(draft: LegDraft): Pick<Leg, 'arc' | 'endDmeNm'> {
  if (draft.direction === 'arc') {
    const { arcDme, arcRadial, arcTurn } = draft;
    return {
      arc: { dmeNm: readNumber(arcDme), toRadialDeg: readNumber(arcRadial), turn: arcTurn },
    };
  }
  const isEndGiven = draft.endDme.trim() !== '' && draft.dme === 'yes';
  return isEndGiven ? { endDmeNm: readNumber(draft.endDme) } : {};
}
