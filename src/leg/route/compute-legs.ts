import { rangeProblems } from '../../base/in-range.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import { checkStation } from '../../station/check-station.ts';
import type { Wind } from '../../wind/wind.ts';
import { computeLeg, type ComputedLeg } from './compute-leg.ts';
import { placeLegs } from './place-legs.ts';
import type { PlanAircraft, RouteLeg } from './route-leg.ts';

/** A whole route as it is computed. */
export interface RouteRequest {
  readonly aircraft: PlanAircraft;
  readonly wind: Wind;
  /** Above mean sea level, for all legs. */
  readonly altitudeFt: number;
  readonly dateIso: string;
  readonly legs: readonly RouteLeg[];
}

/** A whole route, computed. */
export interface ComputedRoute {
  readonly legs: readonly ComputedLeg[];
  readonly totals: { readonly distanceNm: number; readonly timeS: number; readonly fuel: number };
}

const AIRSPEED = { least: 30, most: 600, what: 'a true airspeed in knots' };
const FUEL_FLOW = { least: 0, most: 10_000, what: 'fuel for one hour' };
const WIND_FROM = { least: 0, most: 360, what: 'where the wind blows from, degrees true' };
const WIND_SPEED = { least: 0, most: 250, what: 'a wind speed in knots' };
const ALTITUDE = { least: -1_000, most: 60_000, what: 'feet above mean sea level' };

/**
 * Computes every leg of a route and the totals.
 *
 * Refuses with every field that is wrong: figures out of range, a wind not below the airspeed, places that are missing (`placeLegs`), and what a
 * single leg refuses (`computeLeg`), there with the leg named in the words. Fuel is without reserve.
 */
export function computeLegs(request: RouteRequest): Result<ComputedRoute> {
  const problems = requestProblems(request);
  const placed = placeLegs(request.legs);
  if (!placed.ok || problems.length > 0)
    return refuse([...problems, ...(placed.ok ? [] : placed.problem)].filter(isFirstOfItsKind));
  const legs: ComputedLeg[] = [];
  for (const [index, leg] of placed.value.entries()) {
    const computed = computeLeg(leg, request);
    if (computed.ok) legs.push(computed.value);
    else problems.push(...computed.problem.map((each) => inLeg(each, index)));
  }
  if (problems.length > 0) return refuse(problems.filter(isFirstOfItsKind));
  const sum = (of: (leg: ComputedLeg) => number): number =>
    legs.reduce((total, leg) => total + of(leg), 0);
  return accept({
    legs,
    totals: {
      distanceNm: sum((leg) => leg.distanceNm),
      timeS: sum((leg) => leg.timeS),
      fuel: sum((leg) => leg.fuel),
    },
  });
}

function requestProblems({ aircraft, wind, altitudeFt, legs }: RouteRequest): FieldProblem[] {
  return [
    ...rangeProblems('aircraft.trueAirspeedKt', aircraft.trueAirspeedKt, AIRSPEED),
    ...rangeProblems('aircraft.fuelPerHour', aircraft.fuelPerHour, FUEL_FLOW),
    ...rangeProblems('wind.fromDegTrue', wind.fromDegTrue, WIND_FROM),
    ...rangeProblems('wind.speedKt', wind.speedKt, WIND_SPEED),
    ...windProblems('wind.speedKt', wind.speedKt, aircraft.trueAirspeedKt),
    ...legs.flatMap(({ wind: own }, index) => legWindProblems(own, index, aircraft)),
    ...rangeProblems('altitudeFt', altitudeFt, ALTITUDE),
    ...(legs.length > 0
      ? []
      : [{ field: 'legs', expected: 'at least one leg', got: 'an empty list' }]),
    ...legs.flatMap(({ station }, index) => {
      const checked = checkStation(station, `legs.${index}.station`);
      return checked.ok ? [] : checked.problem;
    }),
  ];
}

/** Refused from wherever it blows: with it behind, a leg could be flown, but nobody could turn back. */
function windProblems(field: string, windSpeedKt: number, trueAirspeedKt: number): FieldProblem[] {
  if (!(windSpeedKt >= trueAirspeedKt)) return [];
  const expected = `a wind below the airspeed of ${trueAirspeedKt} kt`;
  return [{ field, expected, got: `${windSpeedKt} kt, too strong` }];
}

function legWindProblems(
  wind: Wind | undefined,
  index: number,
  { trueAirspeedKt }: PlanAircraft,
): FieldProblem[] {
  if (wind === undefined) return [];
  const field = `legs.${index}.wind`;
  return [
    ...rangeProblems(`${field}.fromDegTrue`, wind.fromDegTrue, WIND_FROM),
    ...rangeProblems(`${field}.speedKt`, wind.speedKt, WIND_SPEED),
    ...windProblems(`${field}.speedKt`, wind.speedKt, trueAirspeedKt),
  ];
}

function inLeg(problem: FieldProblem, index: number): FieldProblem {
  return problem.field === 'wind.speedKt'
    ? { ...problem, got: `${problem.got}, too strong for leg ${index + 1}` }
    : problem;
}

function isFirstOfItsKind(problem: FieldProblem, index: number, all: readonly FieldProblem[]) {
  return all.findIndex((each) => each.field === problem.field) === index;
}
