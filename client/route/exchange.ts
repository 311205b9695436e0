import type { LatLon } from '../../src/earth/geodesic.ts';
import { gpxText } from '../../src/flight/files/gpx.ts';
import { accept, refuse, type Result } from '../../src/base/result.ts';
import { indexStations, stationsNear } from '../../src/station/library/find-stations.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { threeFigures } from '../parts/figures.ts';
import type { PlannedRoute } from './read-route.ts';
import { routeTitle, type RouteDraft } from './route-draft.ts';

/** The planned flight as GPX 1.1: stations, and the way from start to destination. */
export function routeGpx(draft: RouteDraft, { start, destination }: PlannedRoute): string {
  const places = draft.via.map((station) => ({ name: station.ident, place: station }));
  return gpxText({
    name: routeTitle(draft),
    places,
    route: [
      { name: draft.start.trim(), place: start },
      ...places,
      { name: draft.destination.trim(), place: destination },
    ],
    track: [],
  });
}

/** The same as GeoJSON (RFC 7946): a point for each station, a line for each leg, with its figures. */
export function routeGeoJson(draft: RouteDraft, plan: PlannedRoute): string {
  const stations = draft.via.map((station) => ({
    type: 'Feature',
    geometry: { type: 'Point', coordinates: position(station) },
    properties: { ident: station.ident, frequencyMhz: station.frequencyMhz },
  }));
  const legs = plan.legs.map((leg, at) => {
    const computed = plan.computed.legs[at];
    return {
      type: 'Feature',
      geometry: lineOf(leg.start, leg.end),
      properties: {
        leg: at + 1,
        station: leg.station.ident,
        direction: leg.direction,
        obs: computed === undefined ? null : threeFigures(computed.courseDeg),
        distanceNm: computed?.distanceNm ?? null,
      },
    };
  });
  return JSON.stringify(
    { type: 'FeatureCollection', features: [...stations, ...legs] },
    undefined,
    2,
  );
}

/** A line that crosses the antimeridian is cut there, as RFC 7946, 3.1.9 asks. */
function lineOf(start: LatLon, end: LatLon) {
  const line = [position(start), position(end)];
  if (Math.abs(end.longitudeDeg - start.longitudeDeg) <= 180)
    return { type: 'LineString', coordinates: line };
  const sign = start.longitudeDeg > 0 ? 1 : -1;
  const toEdge = 180 - Math.abs(start.longitudeDeg);
  const part = toEdge / (toEdge + 180 - Math.abs(end.longitudeDeg));
  const latitude = start.latitudeDeg + part * (end.latitudeDeg - start.latitudeDeg);
  return {
    type: 'MultiLineString',
    coordinates: [
      [position(start), [180 * sign, latitude]],
      [[-180 * sign, latitude], position(end)],
    ],
  };
}

function position({ latitudeDeg, longitudeDeg }: LatLon): readonly [number, number] {
  return [longitudeDeg, latitudeDeg];
}

/** A point of a GPX route is a station of the library when one of that ident stands this near, NM. */
const SAME_STATION_NM = 2;

/** What a GPX route comes to here. */
export interface ImportedRoute {
  readonly name: string;
  readonly start: LatLon;
  readonly destination: LatLon;
  readonly via: readonly LibraryStation[];
  /** Points in between that are no station of the library: they are left out, and told. */
  readonly leftOut: readonly string[];
}

/**
 * Reads the first route (else the first track) of a GPX file: its ends, and those of its points between them that
 * are stations of the library.
 */
export function readGpxRoute(
  text: string,
  library: readonly LibraryStation[],
): Result<ImportedRoute, string> {
  const document = gpxDocument(text);
  if (document === null) return refuse('This is no GPX file.');
  const route = document.querySelector('rte') ?? document.querySelector('trk');
  const points = [...(route?.querySelectorAll('rtept, trkpt') ?? [])].flatMap((point) => {
    const latitudeDeg = Number(point.getAttribute('lat') ?? 'none');
    const longitudeDeg = Number(point.getAttribute('lon') ?? 'none');
    const isPlace = Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180;
    const name = point.querySelector('name')?.textContent.trim() ?? '';
    return isPlace ? [{ place: { latitudeDeg, longitudeDeg }, name }] : [];
  });
  const [first, last] = [points.at(0), points.at(-1)];
  if (!first || !last || points.length < 2)
    return refuse('This GPX file has no route with at least two points.');
  const index = indexStations(library);
  const between = points.slice(1, -1).map(({ place, name }) => {
    const near = stationsNear(index, place, SAME_STATION_NM).map(({ station }) => station);
    return { name, station: near.find(({ ident }) => ident === name.toUpperCase()) ?? near[0] };
  });
  return accept({
    name: route?.querySelector('name')?.textContent.trim() ?? '',
    start: first.place,
    destination: last.place,
    via: between.flatMap(({ station }) => station ?? []),
    leftOut: between.flatMap(({ name, station }) => (station ? [] : [name || 'a point'])),
  });
}

function gpxDocument(text: string): Document | null {
  // What is no GPX at all would make the parser write a page of its own, with styles that the page’s policy stops.
  if (!/<gpx[\s>]/.test(text)) return null;
  const document = new DOMParser().parseFromString(text, 'application/xml');
  const isGpx =
    document.querySelector('parsererror') === null && document.querySelector('gpx') !== null;
  return isGpx ? document : null;
}
