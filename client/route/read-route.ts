import { accept, refuse, type FieldProblem, type Result } from '../../src/base/result.ts';
import { rangeProblems } from '../../src/base/in-range.ts';
import { readNumber } from '../../src/earth/typed-angle.ts';
import type { LatLon } from '../../src/earth/geodesic.ts';
import type { Aircraft } from '../../src/leg/leg.ts';
import { computeLegs, type ComputedRoute } from '../../src/leg/route/compute-legs.ts';
import { placeLegs } from '../../src/leg/route/place-legs.ts';
import { legsOf } from '../../src/leg/route/propose-route.ts';
import type { PlacedLeg, RouteLeg } from '../../src/leg/route/route-leg.ts';
import type { StationIndex } from '../../src/station/library/find-stations.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import type { Wind } from '../../src/wind/wind.ts';
import { resolveFix, type Resolved } from './resolve-fix.ts';
import type { RouteDraft } from './route-draft.ts';

/** What can be read of a flight being planned, even while some of it is missing. */
export interface RouteRead {
  readonly start: Resolved | null;
  readonly destination: Resolved | null;
  readonly altitudeFt: number | null;
  /** By the name of the field. */
  readonly problems: ReadonlyMap<string, string>;
  /** Null until both ends, the altitude, and at least one station are there. */
  readonly plan: PlannedRoute | null;
}

/** A flight that has been worked out. */
export interface PlannedRoute {
  readonly start: LatLon;
  readonly destination: LatLon;
  readonly altitudeFt: number;
  /** Still air where none was given. */
  readonly wind: Wind;
  readonly isWindGiven: boolean;
  readonly legs: readonly PlacedLeg[];
  /** The library's station of each leg. */
  readonly stations: readonly LibraryStation[];
  readonly computed: ComputedRoute;
}

const ALTITUDE = { least: 0, most: 45_000, what: 'feet above mean sea level' };

/** Reads a flight as far as it goes; nothing that is empty is a problem yet. */
export function readRoute(draft: RouteDraft, aircraft: Aircraft, index: StationIndex): RouteRead {
  const problems = new Map<string, string>();
  const altitudeFt = figureIn(draft.altitude, 'altitude', problems);
  const ends = readEnds(draft, index, altitudeFt ?? 0, problems);
  const wind = windIn(draft, problems);
  const fuelPerHour = draft.fuelPerHour.trim() === '' ? 0 : readNumber(draft.fuelPerHour);
  const { start, destination } = ends;
  const read = { ...ends, altitudeFt, problems, plan: null };
  if (!start?.place || !destination?.place || altitudeFt === null || draft.via.length === 0)
    return read;
  if (wind === null) return read;
  const wish = { start: start.place, destination: destination.place, altitudeFt };
  const routeLegs = withOwnWinds(legsOf(draft.via, wish), draft, problems);
  const stations = routeLegs.flatMap(({ station }) =>
    draft.via.filter((each) => isSameStation(each, station)).slice(0, 1),
  );
  const computed = worked(
    computeLegs({
      aircraft: { ...aircraft, fuelPerHour, fuelUnit: draft.fuelUnit },
      wind: wind.wind,
      altitudeFt,
      dateIso: draft.date,
      legs: routeLegs,
    }),
    placeLegs(routeLegs),
  );
  if (!computed.ok) {
    for (const { field, words } of computed.problem) problems.set(field, words);
    return read;
  }
  return {
    ...read,
    plan: { ...wish, wind: wind.wind, isWindGiven: wind.isGiven, stations, ...computed.value },
  };
}

/** How the wind of each leg is kept: by station and direction, and by which time it is flown where that is not the first. */
export function windKeysOf(legs: readonly RouteLeg[]): readonly string[] {
  const flown = new Map<string, number>();
  return legs.map(({ station, direction }) => {
    const key = `${station.ident} ${station.latitudeDeg.toFixed(3)} ${direction}`;
    const times = (flown.get(key) ?? 0) + 1;
    flown.set(key, times);
    return times === 1 ? key : `${key} ${times}`;
  });
}

/** The legs with the winds typed for single ones, `280/22`. */
function withOwnWinds(
  legs: readonly RouteLeg[],
  { legWinds }: RouteDraft,
  problems: Map<string, string>,
): readonly RouteLeg[] {
  const keys = windKeysOf(legs);
  return legs.map((leg, at) => {
    const key = keys[at] ?? '';
    const text = (legWinds[key] ?? '').trim();
    if (text === '') return leg;
    const [, from, speed] = /^(\d{1,3})\s*[/ ]\s*(\d{1,3})(?:\s*KT)?$/i.exec(text) ?? [];
    const wind = { fromDegTrue: Number(from), speedKt: Number(speed) };
    if (wind.fromDegTrue <= 360 && wind.speedKt <= 250) return { ...leg, wind };
    problems.set(`legWinds.${key}`, 'A wind is written like 280/22: from, true, and knots.');
    return leg;
  });
}

function isSameStation(one: LibraryStation, other: LatLon & { readonly ident: string }): boolean {
  return (
    one.ident === other.ident &&
    one.latitudeDeg === other.latitudeDeg &&
    one.longitudeDeg === other.longitudeDeg
  );
}

function worked(
  computed: Result<ComputedRoute>,
  placed: Result<readonly PlacedLeg[]>,
): Result<
  { readonly computed: ComputedRoute; readonly legs: readonly PlacedLeg[] },
  readonly { readonly field: string; readonly words: string }[]
> {
  if (computed.ok && placed.ok) return accept({ computed: computed.value, legs: placed.value });
  const problems = computed.ok ? (placed.ok ? [] : placed.problem) : computed.problem;
  return refuse(problems.map((each) => ({ field: fieldOnPage(each), words: wordsFor(each) })));
}

const FIELDS: Readonly<Record<string, string>> = {
  'wind.speedKt': 'windSpeed',
  'wind.fromDegTrue': 'windFrom',
  altitudeFt: 'altitude',
  dateIso: 'date',
  'aircraft.fuelPerHour': 'fuelPerHour',
};

function fieldOnPage({ field }: FieldProblem): string {
  if (/^legs\.\d+\.wind/.test(field)) return 'windSpeed';
  return FIELDS[field] ?? 'via';
}

function wordsFor({ expected, got }: FieldProblem): string {
  return `Expected ${expected}. Not ${got}.`;
}

function readEnds(
  draft: RouteDraft,
  index: StationIndex,
  altitudeFt: number,
  problems: Map<string, string>,
): Pick<RouteRead, 'start' | 'destination'> {
  const find = (field: 'start' | 'destination', near: LatLon | null): Resolved | null => {
    if (draft[field].trim() === '') return null;
    const chosenId = draft[`${field}StationId`];
    const resolved = resolveFix(draft[field], index, { chosenId, near, altitudeFt });
    if (resolved.ok) return resolved.value;
    problems.set(field, resolved.problem);
    return null;
  };
  const start = find('start', null);
  const destination = find('destination', start?.place ?? null);
  return {
    // The end that was named by an ident alone is looked for near the other one.
    start: start?.place === null ? find('start', destination?.place ?? null) : start,
    destination,
  };
}

function figureIn(text: string, field: string, problems: Map<string, string>): number | null {
  if (text.trim() === '') return null;
  const figure = readNumber(text);
  const [problem] = rangeProblems(field, figure, ALTITUDE);
  if (problem) problems.set(field, `Expected ${problem.expected}.`);
  return problem ? null : figure;
}

function windIn(
  { windFrom, windSpeed }: RouteDraft,
  problems: Map<string, string>,
): { readonly wind: Wind; readonly isGiven: boolean } | null {
  if (windFrom.trim() === '' && windSpeed.trim() === '')
    return { wind: { fromDegTrue: 0, speedKt: 0 }, isGiven: false };
  const wind = { fromDegTrue: readNumber(windFrom), speedKt: readNumber(windSpeed) };
  if (!(wind.fromDegTrue >= 0 && wind.fromDegTrue <= 360))
    problems.set('windFrom', 'Expected where the wind blows from, 0 to 360 degrees true.');
  if (!(wind.speedKt >= 0 && wind.speedKt <= 250))
    problems.set('windSpeed', 'Expected a wind speed in knots, 0 to 250.');
  const isGood = !problems.has('windFrom') && !problems.has('windSpeed');
  return isGood ? { wind, isGiven: true } : null;
}
