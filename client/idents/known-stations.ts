import { geodesicTo } from '../../src/earth/geodesic.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import type { Station } from '../../src/station/station.ts';
import { demoPlan } from '../demo.ts';
import { allStations } from '../stations/station-disk.ts';
import { flightRows, loadEvents } from '../store/log-disk.ts';

/** The stations that this device knows of, as far as idents go. */
export interface KnownStations {
  /** Each once: those of the flights, newest flight first, then those of the library. */
  readonly all: readonly Station[];
  /** Those of the flights and of the demo. */
  readonly ofFlights: readonly Station[];
  /** Those of the newest flight that is not finished, in the order of its legs. */
  readonly planned: readonly Station[];
}

/** How many flights are looked through: their logs are read from disk. */
const FLIGHTS = 20;

const NEAR_NM = 100;

/** A degree of latitude is 60 NM, nearly: what is farther north or south than this is not near. */
const NEAR_DEG = NEAR_NM / 59;

/** The stations of the flights on this device, of the demo, and of the library where there is one. */
export async function knownStations(): Promise<KnownStations> {
  const rows = (await flightRows()).filter((row) => !row.isDeleted);
  const newest = rows
    .toSorted((one, other) => other.createdAtMs - one.createdAtMs)
    .slice(0, FLIGHTS);
  const flights = await Promise.all(newest.map((row) => loadEvents(row.id)));
  const planned = flights.find((events) => events.every(({ kind }) => kind !== 'finished')) ?? [];
  const demo = demoPlan('').legs.map(({ station }) => station);
  const ofFlights = eachOnce([...flights.flatMap(stationsOf), ...demo]);
  // Without a library there are still the flights.
  const library = await allStations().catch(() => []);
  return {
    all: eachOnce([...ofFlights, ...library]),
    ofFlights,
    planned: eachOnce(stationsOf(planned)),
  };
}

/** The idents of the planned flight, and those of stations within 100 NM of it. */
export function identsAround({ all, planned }: KnownStations): {
  readonly route: readonly string[];
  readonly near: readonly string[];
} {
  const isNear = (station: Station): boolean =>
    planned.some(
      (each) =>
        Math.abs(each.latitudeDeg - station.latitudeDeg) <= NEAR_DEG &&
        geodesicTo(each, station).distanceNm <= NEAR_NM,
    );
  const keyable = (stations: readonly Station[]): readonly string[] =>
    stations.map(({ ident }) => ident.toUpperCase()).filter((ident) => /^[A-Z]{1,4}$/.test(ident));
  return { route: keyable(planned), near: keyable(all.filter(isNear)) };
}

function stationsOf(events: readonly FlightEvent[]): readonly Station[] {
  const plan = events.findLast((event) => event.kind === 'plan');
  return (plan?.legs ?? []).map(({ station }) => station);
}

/** The same station may be in several flights and in the library. */
function eachOnce(stations: readonly Station[]): readonly Station[] {
  const each = new Map<string, Station>();
  for (const station of stations) {
    const { ident, frequencyMhz = 0, latitudeDeg, longitudeDeg } = station;
    const key = `${ident} ${frequencyMhz} ${latitudeDeg.toFixed(1)} ${longitudeDeg.toFixed(1)}`;
    if (!each.has(key)) each.set(key, station);
  }
  return [...each.values()];
}
