import { geodesicTo, type LatLon } from '../../earth/geodesic.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import { rangeProblems } from '../../base/in-range.ts';
import type { PlacedLeg, RouteLeg } from './route-leg.ts';

/** A place given again for one that is known already may be this far from it, NM: what rounding does. */
const SAME_PLACE_NM = 0.1;
/** A leg shorter than this has no direction that could be flown, NM. */
const LEAST_LEG_NM = 0.1;
/** Beyond this nothing is received, NM; it also keeps the line away from the far side of the Earth. */
const LONGEST_LEG_NM = 1_000;

const LATITUDE = { least: -90, most: 90, what: 'a latitude in degrees, north positive' };
const LONGITUDE = { least: -180, most: 180, what: 'a longitude in degrees, east positive' };

/**
 * Where each leg begins and ends. A place that was left out comes from the leg before or after it.
 *
 * Refuses, with the field: a place that is neither given nor known from the neighbour, a place or station off the
 * globe, an end of a `to` leg or a start of a `from` leg that is not the station, and a leg of no length or of more than
 * 1,000 NM.
 */
export function placeLegs(legs: readonly RouteLeg[]): Result<readonly PlacedLeg[]> {
  const placed: PlacedLeg[] = [];
  const problems: FieldProblem[] = [];
  let before: Neighbour = undefined;
  for (const [index, leg] of legs.entries()) {
    const field = `legs.${index}`;
    const one = placeLeg(leg, { field, before, after: startOf(legs[index + 1], index + 1) });
    if (one.ok) placed.push(one.value);
    else problems.push(...one.problem);
    before = one.ok ? one.value.end : endOf(leg, index);
  }
  return problems.length > 0 ? refuse(problems) : accept(placed);
}

/** Where a neighbour begins or ends; undefined: not given; null: that cannot be judged, it has a problem of its own. */
type Neighbour = LatLon | null | undefined;

interface Neighbours {
  readonly field: string;
  readonly before: Neighbour;
  readonly after: Neighbour;
}

function startOf(leg: RouteLeg | undefined, index: number): Neighbour {
  if (leg === undefined) return undefined;
  const place = leg.direction === 'from' ? leg.station : leg.start;
  return isOnGlobe(place, `legs.${index}`) ? place : null;
}

/** Where a leg with a problem ends, as far as that can be told. */
function endOf(leg: RouteLeg, index: number): Neighbour {
  const place = leg.direction === 'to' ? leg.station : leg.end;
  return place !== undefined && isOnGlobe(place, `legs.${index}`) ? place : null;
}

function isOnGlobe(place: LatLon | undefined, field: string): boolean {
  return placeProblems(place, field).length === 0;
}

function placeLeg(leg: RouteLeg, { field, before, after }: Neighbours): Result<PlacedLeg> {
  const problems = [
    ...placeProblems(leg.station, `${field}.station`),
    ...placeProblems(leg.start, `${field}.start`),
    ...placeProblems(leg.end, `${field}.end`),
  ];
  if (problems.length > 0) return refuse(problems);
  const { start, end } = endsOf(leg, before, after);
  // The neighbour's own problem is told at the neighbour.
  if (start === null || end === null) return refuse([]);
  if (start === undefined) return refuse([missing(`${field}.start`, 'begins')]);
  if (end === undefined) return refuse([missing(`${field}.end`, 'ends')]);
  const isTo = leg.direction === 'to';
  const elsewhere = isTo
    ? awayFromStation(leg.end, leg, `${field}.end`, 'ends over')
    : awayFromStation(leg.start, leg, `${field}.start`, 'starts at');
  if (elsewhere.length > 0) return refuse(elsewhere);
  const far = lengthProblems(start, end, `${field}.${isTo ? 'start' : 'end'}`);
  if (far.length > 0) return refuse(far);
  return accept({ ...leg, start, end });
}

function endsOf(leg: RouteLeg, before: Neighbour, after: Neighbour) {
  const station = placeOf(leg.station);
  return leg.direction === 'to'
    ? { start: leg.start ?? before, end: station }
    : { start: station, end: leg.end ?? after };
}

function placeOf({ latitudeDeg, longitudeDeg }: LatLon): LatLon {
  return { latitudeDeg, longitudeDeg };
}

function missing(field: string, verb: 'begins' | 'ends'): FieldProblem {
  return { field, expected: `the place where this leg ${verb}`, got: 'nothing' };
}

function placeProblems(place: LatLon | undefined, field: string): FieldProblem[] {
  if (place === undefined) return [];
  return [
    ...rangeProblems(`${field}.latitudeDeg`, place.latitudeDeg, LATITUDE),
    ...rangeProblems(`${field}.longitudeDeg`, place.longitudeDeg, LONGITUDE),
  ];
}

function awayFromStation(
  place: LatLon | undefined,
  { station, direction }: RouteLeg,
  field: string,
  verb: string,
): FieldProblem[] {
  if (place === undefined) return [];
  const { distanceNm } = geodesicTo(place, station);
  if (distanceNm <= SAME_PLACE_NM) return [];
  const expected = `nothing here: a leg ${direction} a station ${verb} it`;
  return [{ field, expected, got: `a place ${distanceNm.toFixed(1)} NM from ${station.ident}` }];
}

function lengthProblems(start: LatLon, end: LatLon, field: string): FieldProblem[] {
  const { distanceNm } = geodesicTo(start, end);
  const got = `${distanceNm.toFixed(1)} NM`;
  if (distanceNm < LEAST_LEG_NM)
    return [{ field, expected: 'a place away from the station: the leg has no length', got }];
  if (distanceNm > LONGEST_LEG_NM)
    return [{ field, expected: `a place within ${LONGEST_LEG_NM} NM of the station`, got }];
  return [];
}
