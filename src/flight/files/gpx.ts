import Builder from 'fast-xml-builder';
import type { LatLon } from '../../earth/geodesic.ts';

/** A named place of a route or on its own. */
interface NamedPlace {
  readonly name: string;
  readonly place: LatLon;
}

/** What goes into a GPX file; what is empty is left out. */
export interface GpxContent {
  readonly name: string;
  /** Stations. */
  readonly places: readonly NamedPlace[];
  readonly route: readonly NamedPlace[];
  /** Where the readings put the aircraft, each with its moment as `2026-11-25T12:00:00.000Z`. */
  readonly track: readonly { readonly timeIso: string; readonly place: LatLon }[];
}

const CAUTION = 'Practice and prompting aid, never for navigation.';

/**
 * A GPX 1.1 file: stations as waypoints, the legs as a route, and the flight as a track.
 *
 * Texts may hold anything; what XML has no place for becomes a blank.
 * *Source:* GPX 1.1 schema (topografix.com/GPX/1/1): metadata, wpt, rte, trk in this order; longitude below +180.
 */
export function gpxText({ name, places, route, track }: GpxContent): string {
  const title = printable(name);
  const builder = new Builder({ ignoreAttributes: false, attributeNamePrefix: '@', format: true });
  return builder.build({
    '?xml': { '@version': '1.0', '@encoding': 'UTF-8' },
    gpx: {
      '@version': '1.1',
      '@creator': 'Spoken Radial',
      '@xmlns': 'http://www.topografix.com/GPX/1/1',
      metadata: { name: title, desc: CAUTION },
      wpt: places.map(named),
      rte: route.length === 0 ? [] : [{ name: title, rtept: route.map(named) }],
      trk: track.length === 0 ? [] : [{ name: title, trkseg: [{ trkpt: track.map(timed) }] }],
    },
  });
}

function named({ name, place }: NamedPlace) {
  return { ...at(place), name: printable(name) };
}

function timed({ timeIso, place }: GpxContent['track'][number]) {
  return { ...at(place), time: timeIso };
}

function at({ latitudeDeg, longitudeDeg }: LatLon) {
  const longitude = longitudeDeg >= 180 ? longitudeDeg - 360 : longitudeDeg;
  return { '@lat': latitudeDeg.toFixed(6), '@lon': longitude.toFixed(6) };
}

function printable(text: string): string {
  // eslint-disable-next-line no-control-regex -- XML 1.0, 2.2: these are no characters of a document.
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, ' ');
}
