import { geodesicTo, type LatLon } from '../../src/earth/geodesic.ts';
import { knownStations } from '../idents/known-stations.ts';

/** A station that sends an ident. */
export interface Sender {
  readonly name: string | null;
  readonly frequencyMhz: number | null;
  /** From the station that was expected, or the first of the planned flight; null: neither is known. */
  readonly distanceNm: number | null;
}

const MOST = 3;

/** Stations known on this device that send an ident, nearest first. */
export async function whoSends(ident: string, near: LatLon | null): Promise<readonly Sender[]> {
  const { all, planned } = await knownStations();
  const from = near ?? planned[0] ?? null;
  const senders = all
    .filter((station) => station.ident.toUpperCase() === ident)
    .map((station) => ({
      name: station.name ?? null,
      frequencyMhz: station.frequencyMhz ?? null,
      distanceNm: from === null ? null : geodesicTo(from, station).distanceNm,
    }));
  return senders
    .toSorted((one, other) => (one.distanceNm ?? 0) - (other.distanceNm ?? 0))
    .slice(0, MOST);
}
