import { accept, refuse, type Result } from '../../base/result.ts';
import { geodesicTo, placeAt, type LatLon } from '../../earth/geodesic.ts';
import { indexStations } from '../../station/library/find-stations.ts';
import { stationOf, type LibraryStation } from '../../station/library/library-station.ts';
import { receptionNm } from '../../station/library/reception.ts';
import { legFixes, type LegFix } from './leg-fixes.ts';
import { placeLegs } from './place-legs.ts';
import { cheapestChain, isOver, surveyed, type Survey } from './station-chain.ts';
import type { RouteLeg } from './route-leg.ts';

/** A flight by way of stations, proposed. */
export interface ProposedRoute {
  readonly stations: readonly LibraryStation[];
  readonly legs: readonly RouteLeg[];
  readonly distanceNm: number;
  /** More than the straight line, NM. */
  readonly extraNm: number;
  /** For each leg, where a second station tells the place. */
  readonly fixes: readonly (readonly LegFix[])[];
}

/** What a route is proposed for. */
export interface RouteWish {
  readonly start: LatLon;
  readonly destination: LatLon;
  /** Above mean sea level. */
  readonly altitudeFt: number;
}

/** Altitudes that are tried where none is enough, feet: as high as light aircraft fly without oxygen rules. */
const STEP_FT = 1_000;
const HIGHEST_FT = 14_000;
const LEAST_FLIGHT_NM = 1;

/**
 * Proposes a flight by way of the stations of a library, each leg within reception, with the least extra distance.
 *
 * With it comes, for each leg, where a second station off to the side tells the place (`legFixes`).
 * Between two stations the change-over is midway, or nearer to the one that is received less far. Refuses a start
 * equal to the destination, and where no chain of stations is in reach says what would be needed: the lowest
 * altitude at which there is one, if there is.
 * *Source:* change-over midway on a straight segment: FAA AIM 5-3-6.
 */
export function proposeRoute(
  library: readonly LibraryStation[],
  wish: RouteWish,
): Result<ProposedRoute> {
  const { start, destination, altitudeFt } = wish;
  const directNm = geodesicTo(start, destination).distanceNm;
  if (directNm < LEAST_FLIGHT_NM) {
    const expected = 'a place away from the start';
    return refuse([{ field: 'destination', expected, got: `${directNm.toFixed(1)} NM from it` }]);
  }
  const survey = surveyed(library, start, destination);
  const chain = cheapestChain(survey, altitudeFt);
  if (chain === null) return refuse([unreachable(survey, altitudeFt)]);
  const legs = legsOf(chain.stations, wish);
  const placed = placeLegs(legs);
  return accept({
    stations: chain.stations,
    legs,
    fixes: placed.ok ? legFixes(placed.value, indexStations(library), altitudeFt) : [],
    distanceNm: chain.distanceNm,
    extraNm: Math.max(0, chain.distanceNm - directNm),
  });
}

function unreachable(survey: Survey, altitudeFt: number) {
  const got = `none at ${altitudeFt} ft`;
  const expected = 'stations that reach from the start to the destination';
  if (survey.stations.length === 0)
    return { field: 'stations', expected: 'stations in the library: import some', got: 'none' };
  const first = Math.floor(altitudeFt / STEP_FT) * STEP_FT + STEP_FT;
  for (let higherFt = first; higherFt <= HIGHEST_FT; higherFt += STEP_FT) {
    if (cheapestChain(survey, higherFt) !== null)
      return { field: 'altitudeFt', expected: `${expected}: fly at ${higherFt} ft or higher`, got };
  }
  return {
    field: 'stations',
    expected: `${expected}, up to ${HIGHEST_FT} ft: none is near enough, add one or fly another way`,
    got,
  };
}

/** The legs over a chain of stations: to the first, from each to the change-over, on to the next, and on. */
export function legsOf(
  stations: readonly LibraryStation[],
  { start, destination, altitudeFt }: RouteWish,
): readonly RouteLeg[] {
  const legs: RouteLeg[] = [];
  for (const [index, kept] of stations.entries()) {
    const { serviceClass } = kept;
    const of = {
      station: stationOf(kept),
      ...(serviceClass === undefined ? {} : { serviceClass }),
    };
    const before = stations[index - 1];
    const next = stations[index + 1];
    if (before) legs.push({ ...of, direction: 'to', start: changeOver(before, kept, altitudeFt) });
    else if (!isOver(start, kept)) legs.push({ ...of, direction: 'to', start });
    if (next) legs.push({ ...of, direction: 'from', end: changeOver(kept, next, altitudeFt) });
    else if (!isOver(destination, kept)) legs.push({ ...of, direction: 'from', end: destination });
  }
  return legs;
}

/** Where one station is left for the next: midway, unless one of them is not received that far. */
function changeOver(one: LibraryStation, other: LibraryStation, altitudeFt: number): LatLon {
  const line = geodesicTo(one, other);
  const half = line.distanceNm / 2;
  const leastNm = line.distanceNm - receptionNm(other, altitudeFt);
  const mostNm = receptionNm(one, altitudeFt);
  // Out of reach of both there is no better place than midway; the leg's own warnings say so.
  const atNm = leastNm > mostNm ? half : Math.min(mostNm, Math.max(leastNm, half));
  return placeAt(one, line.azimuthDeg, atNm);
}
