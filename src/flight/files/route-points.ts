import { stationDeg } from '../../base/bearing.ts';
import { placeAt, type LatLon } from '../../earth/geodesic.ts';
import type { Leg } from '../../leg/leg.ts';
import { trueFromStation } from '../../station/radial.ts';
import { groundFromSlant } from '../../station/slant-range.ts';

/** A named place on the way. */
export interface RoutePoint {
  readonly name: string;
  readonly place: LatLon;
  readonly isStation: boolean;
}

/**
 * The places that the legs of a plan lead to, in order: stations flown to or from, and ends known by a DME distance.
 *
 * An end of an arc is the end of its radial at the arc's distance. A place that follows itself is told once.
 */
export function routePoints(legs: readonly Leg[]): readonly RoutePoint[] {
  const points: RoutePoint[] = [];
  for (const leg of legs) {
    const { station, direction } = leg;
    const over: RoutePoint = { name: station.ident, place: placeOf(station), isStation: true };
    const end = endOf(leg);
    const onLeg = leg.arc || direction === 'from' ? [over, ...end] : end.length > 0 ? end : [over];
    for (const point of onLeg) if (!isSame(points.at(-1), point)) points.push(point);
  }
  return points;
}

function placeOf({ latitudeDeg, longitudeDeg }: LatLon): LatLon {
  return { latitudeDeg, longitudeDeg };
}

function endOf(leg: Leg): readonly RoutePoint[] {
  const { station, direction, courseDeg, endDmeNm, altitudeFt, arc } = leg;
  const inbound = stationDeg(courseDeg + 180);
  const radial = arc
    ? stationDeg(arc.toRadialDeg)
    : direction === 'from'
      ? stationDeg(courseDeg)
      : inbound;
  const dmeNm = arc?.dmeNm ?? endDmeNm ?? 0;
  if (dmeNm === 0) return [];
  const antennaFt = (station.dme ?? station).elevationFt;
  const groundNm = groundFromSlant(dmeNm, altitudeFt - antennaFt);
  const figures = String(Math.round(radial)).padStart(3, '0');
  return [
    {
      name: `${station.ident} ${figures} DME ${dmeNm}`,
      place: placeAt(station, trueFromStation(radial, station), groundNm),
      isStation: false,
    },
  ];
}

function isSame(one: RoutePoint | undefined, other: RoutePoint): boolean {
  return (
    one?.place.latitudeDeg === other.place.latitudeDeg &&
    one.place.longitudeDeg === other.place.longitudeDeg
  );
}
