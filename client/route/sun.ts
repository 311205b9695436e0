import { getTimes } from 'suncalc';
import type { LatLon } from '../../src/earth/geodesic.ts';

/** The sun at a place on a day. */
export interface SunDay {
  /** Null where it does not set that day. */
  readonly sunsetMs: number | null;
  readonly isAlwaysUp: boolean;
  readonly isAlwaysDown: boolean;
}

/** Sunset at a place, by the library suncalc (about a minute; hills are not known). `dateIso`: the day there. */
export function sunAt({ latitudeDeg, longitudeDeg }: LatLon, dateIso: string): SunDay {
  // Noon of the place's own solar day, so that the day is the right one far from Greenwich too.
  const noon = Date.parse(`${dateIso}T12:00:00Z`) - longitudeDeg * 240_000;
  const times = getTimes(new Date(noon), latitudeDeg, longitudeDeg);
  return {
    sunsetMs: times.sunset?.getTime() ?? null,
    isAlwaysUp: times.alwaysUp === true,
    isAlwaysDown: times.alwaysDown === true,
  };
}
