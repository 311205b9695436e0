import type { LatLon } from '../../src/earth/geodesic.ts';
import type { LegFix } from '../../src/leg/route/leg-fixes.ts';
import { legMarks } from '../../src/leg/route/leg-marks.ts';
import type { PlacedLeg } from '../../src/leg/route/route-leg.ts';
import { coneRadiusNm } from '../../src/station/cone.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { receptionNm } from '../../src/station/library/reception.ts';
import { threeFigures } from '../parts/figures.ts';
import type { PlannedRoute } from '../route/read-route.ts';
import { boxOf, middleOf, projection, type Box, type Point } from './project.ts';

/** A station of the plan view. */
export interface DrawnStation {
  readonly id: string;
  readonly ident: string;
  readonly at: Point;
  readonly coneNm: number;
  readonly reachNm: number;
}

/** A leg of the plan view. */
export interface DrawnLeg {
  readonly from: Point;
  readonly to: Point;
  /** Beside its middle: what is set on the OBS. */
  readonly label: string;
  readonly ticks: readonly { readonly at: Point; readonly label: string }[];
  /** It ends where the next station takes over. */
  readonly isChangeOver: boolean;
}

/** The radial of a second station, drawn from it to the checkpoint that it tells. */
export interface DrawnCrossing {
  readonly ident: string;
  readonly from: Point;
  readonly to: Point;
}

/** All that the plan view draws, NM about its middle. */
export interface Drawn {
  readonly stations: readonly DrawnStation[];
  readonly legs: readonly DrawnLeg[];
  readonly crossings: readonly DrawnCrossing[];
  readonly start: Point;
  readonly destination: Point;
  readonly box: Box;
  readonly middle: LatLon;
}

/** Lays a planned flight out, with the fixes of its legs. */
export function drawnRoute(plan: PlannedRoute, fixes: readonly (readonly LegFix[])[]): Drawn {
  const { legs, computed, altitudeFt, start, destination } = plan;
  const middle = middleOf([start, destination, ...legs.map(({ station }) => station)]);
  const project = projection(middle);
  const drawnLegs = legs.map((leg, at): DrawnLeg => {
    const figures = computed.legs[at];
    const groundSpeedKt = figures?.groundSpeedKt ?? 1;
    const next = legs[at + 1];
    return {
      from: project(leg.start),
      to: project(leg.end),
      label: figures === undefined ? '' : threeFigures(figures.courseDeg),
      ticks: ticksOf(leg, altitudeFt, groundSpeedKt, project),
      isChangeOver:
        leg.direction === 'from' && next?.direction === 'to' && next.station !== leg.station,
    };
  });
  const crossings = fixes.flat().flatMap(({ place, crossing }): DrawnCrossing[] => {
    if (crossing === null) return [];
    const { station } = crossing;
    return [{ ident: station.ident, from: project(station), to: project(place) }];
  });
  const points = [
    ...[start, destination, ...legs.map(({ station }) => station)].map(project),
    ...crossings.map(({ from }) => from),
  ];
  return {
    stations: eachOnce(plan.stations).map((station) => ({
      id: station.id,
      ident: station.ident,
      at: project(station),
      coneNm: coneRadiusNm(altitudeFt - station.elevationFt),
      reachNm: receptionNm(station, altitudeFt),
    })),
    legs: drawnLegs,
    crossings,
    start: project(start),
    destination: project(destination),
    box: boxOf(points),
    middle,
  };
}

function ticksOf(
  leg: PlacedLeg,
  altitudeFt: number,
  groundSpeedKt: number,
  project: (place: LatLon) => Point,
): DrawnLeg['ticks'] {
  return legMarks(leg, { altitudeFt, groundSpeedKt })
    .filter(({ kind, dmeNm }) => kind === 'dme' && dmeNm !== null)
    .map(({ place, dmeNm }) => ({ at: project(place), label: String(dmeNm) }));
}

function eachOnce(stations: readonly LibraryStation[]): readonly LibraryStation[] {
  return [...new Map(stations.map((station) => [station.id, station])).values()];
}
