import KDBush from 'kdbush';
import { around } from 'geokdbush';
import { METRES_PER_NM } from '../../base/units.ts';
import { geodesicTo, type LatLon } from '../../earth/geodesic.ts';
import type { LibraryStation } from './library-station.ts';

/** The stations of a library, ready to be searched by place. */
export interface StationIndex {
  readonly stations: readonly LibraryStation[];
  readonly places: KDBush | null;
}

/** What is looked for; what is left out does not matter. */
export interface StationQuery {
  /** Part of an ident, a name or a frequency, as typed. */
  readonly text?: string;
  readonly near?: LatLon;
  /** Only with `near`. */
  readonly withinNm?: number;
  readonly frequencyMhz?: number;
  readonly limit?: number;
}

/** A station with its distance from the place asked about; null when none was. */
export interface FoundStation {
  readonly station: LibraryStation;
  readonly distanceNm: number | null;
}

const KM_PER_NM = METRES_PER_NM / 1000;
/** The sphere of the index is up to 0.6 % off the ellipsoid; what comes back is measured anew. */
const SPHERE_MARGIN = 1.01;
const FREQUENCY_STEP_MHZ = 0.001;

/** Builds the index; the list is kept as it is. */
export function indexStations(stations: readonly LibraryStation[]): StationIndex {
  if (stations.length === 0) return { stations, places: null };
  const places = new KDBush(stations.length);
  for (const { longitudeDeg, latitudeDeg } of stations) places.add(longitudeDeg, latitudeDeg);
  return { stations, places: places.finish() };
}

/** The stations within a distance of a place, nearest first. Works across the antimeridian and at the poles. */
export function stationsNear(
  index: StationIndex,
  place: LatLon,
  withinNm: number,
): readonly { readonly station: LibraryStation; readonly distanceNm: number }[] {
  if (index.places === null) return [];
  const km = withinNm * KM_PER_NM * SPHERE_MARGIN;
  return around(index.places, place.longitudeDeg, place.latitudeDeg, Infinity, km)
    .flatMap((item) => {
      const station = index.stations[item];
      return station ? [{ station, distanceNm: geodesicTo(place, station).distanceNm }] : [];
    })
    .filter(({ distanceNm }) => distanceNm <= withinNm)
    .toSorted((one, other) => one.distanceNm - other.distanceNm);
}

/**
 * The stations that fit a search: nearest first where a place is given, else the best fit of the text first.
 *
 * An ident fits best when it is the whole text, then when it begins with it; names and frequencies come after.
 * The same ident elsewhere in the world is always among them: an ident alone never names a station.
 */
export function findStations(index: StationIndex, query: StationQuery): readonly FoundStation[] {
  const { near, withinNm, frequencyMhz, limit = Infinity } = query;
  const text = (query.text ?? '').trim().toUpperCase();
  const inReach = near
    ? stationsNear(index, near, withinNm ?? Infinity)
    : index.stations.map((station) => ({ station, distanceNm: null }));
  return inReach
    .filter(({ station }) => isOn(station, frequencyMhz))
    .map((found) => ({ found, fit: fitOf(found.station, text) }))
    .filter(({ fit }) => fit !== null)
    .toSorted((one, other) => (near ? 0 : (one.fit ?? 0) - (other.fit ?? 0)))
    .slice(0, limit)
    .map(({ found }) => found);
}

function isOn({ frequencyMhz }: LibraryStation, wantedMhz: number | undefined): boolean {
  return wantedMhz === undefined || Math.abs(frequencyMhz - wantedMhz) < FREQUENCY_STEP_MHZ;
}

/** How well a station fits a text, 0 best; null: not at all. No text fits every station. */
function fitOf({ ident, name, frequencyMhz }: LibraryStation, text: string): number | null {
  if (text === '' || ident === text) return 0;
  if (ident.startsWith(text)) return 1;
  const upper = (name ?? '').toUpperCase();
  if (upper.startsWith(text)) return 2;
  if (upper.includes(text)) return 3;
  return /^\d{3}/.test(text) && frequencyMhz.toFixed(3).startsWith(text) ? 4 : null;
}
