import { geodesicTo } from '../../src/earth/geodesic.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import type { Leg } from '../../src/leg/leg.ts';
import type { Station } from '../../src/station/station.ts';
import { demoPlan } from '../demo.ts';
import { flightRows, loadEvents } from '../store/log-disk.ts';

/** The stations that this device knows of, as far as idents go. */
export interface KnownStations {
  /** Each once, those of the newest flight first. */
  readonly all: readonly Station[];
  /** Those of the newest flight that is not finished, in the order of its legs. */
  readonly planned: readonly Station[];
}

/** How many flights are looked through: their logs are read from disk. */
const FLIGHTS = 20;

const NEAR_NM = 100;

/** The stations of the flights on this device and of the demo; those of the demo alone when it has none. */
export async function knownStations(): Promise<KnownStations> {
  const rows = (await flightRows()).filter((row) => !row.isDeleted);
  const newest = rows
    .toSorted((one, other) => other.createdAtMs - one.createdAtMs)
    .slice(0, FLIGHTS);
  const flights = await Promise.all(newest.map((row) => loadEvents(row.id)));
  const planned = flights.find((events) => events.every(({ kind }) => kind !== 'finished')) ?? [];
  const demo = demoPlan('').legs.map(({ station }) => station);
  return {
    all: eachOnce([...flights.flatMap(stationsOf), ...demo]),
    planned: eachOnce(stationsOf(planned)),
  };
}

/** The idents of the planned flight, and those of stations within 100 NM of it. */
export function identsAround({ all, planned }: KnownStations): {
  readonly route: readonly string[];
  readonly near: readonly string[];
} {
  const isNear = (station: Station): boolean =>
    planned.some((each) => geodesicTo(each, station).distanceNm <= NEAR_NM);
  const keyable = (stations: readonly Station[]): readonly string[] =>
    stations.map(({ ident }) => ident.toUpperCase()).filter((ident) => /^[A-Z]{1,4}$/.test(ident));
  return { route: keyable(planned), near: keyable(all.filter(isNear)) };
}

function stationsOf(events: readonly FlightEvent[]): readonly Station[] {
  const plan = events.findLast((event) => event.kind === 'plan');
  return (plan?.legs ?? []).map((leg: Leg) => leg.station);
}

function eachOnce(stations: readonly Station[]): readonly Station[] {
  const each = new Map(
    stations.map((station) => [
      `${station.ident} ${station.frequencyMhz ?? ''} ${station.latitudeDeg.toFixed(2)}`,
      station,
    ]),
  );
  return [...each.values()];
}
