import { accept, refuse, type Result } from '../../src/base/result.ts';
import { geodesicTo, type LatLon } from '../../src/earth/geodesic.ts';
import { placeOnRadial, readFix, type TypedFix } from '../../src/leg/route/typed-fix.ts';
import { findStations, type StationIndex } from '../../src/station/library/find-stations.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';

/** Where a flight begins or ends, found; or the stations among which the pilot has to choose. */
export interface Resolved {
  readonly place: LatLon | null;
  readonly choices: readonly LibraryStation[];
}

/** Stations of one ident that are offered at most. */
const MOST_CHOICES = 12;

/**
 * Finds the place that was typed. `altitudeFt`: for the slant range of a DME distance. `chosenId`: which of several
 * stations with that ident is meant. `near`: those nearest to it are offered first.
 */
export function resolveFix(
  text: string,
  index: StationIndex,
  { chosenId, near, altitudeFt }: { chosenId: string; near: LatLon | null; altitudeFt: number },
): Result<Resolved, string> {
  const fix = readFix(text);
  if (!fix.ok) return fix;
  if (fix.value.kind === 'place') return accept({ place: fix.value.place, choices: [] });
  const { ident } = fix.value;
  const named = findStations(index, { text: ident, ...(near === null ? {} : { near }) })
    .map(({ station }) => station)
    .filter((station) => station.ident === ident);
  const [only] = named;
  if (only === undefined) {
    return refuse(
      `No station ${ident} here. Bring in a file of navaids or add it, or write the place itself.`,
    );
  }
  const chosen = named.length === 1 ? only : named.find(({ id }) => id === chosenId);
  return accept({
    place: chosen ? placeOf(fix.value, chosen, altitudeFt) : null,
    choices: named.length === 1 ? [] : named.slice(0, MOST_CHOICES),
  });
}

function placeOf(
  fix: Exclude<TypedFix, { kind: 'place' }>,
  station: LibraryStation,
  altitudeFt: number,
): LatLon {
  if (fix.kind === 'radial') return placeOnRadial(station, fix, altitudeFt);
  return { latitudeDeg: station.latitudeDeg, longitudeDeg: station.longitudeDeg };
}

/** A station among others of its ident: its name, and how far it is. */
export function choiceWords(station: LibraryStation, near: LatLon | null): string {
  const { ident, name, frequencyMhz, country } = station;
  const far =
    near === null
      ? ''
      : `, ${geodesicTo(near, station).distanceNm.toFixed(0)} NM from the other end`;
  return `${ident} ${frequencyMhz.toFixed(2)} ${name ?? ''}${country === undefined ? '' : ` (${country})`}${far}`;
}
