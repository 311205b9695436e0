import { getTimes } from 'suncalc';
import type { LatLon } from '../../src/earth/geodesic.ts';

/** The sun at a place on a day. */
export interface SunDay {
  /** Null where it does not rise, or set, that day. */
  readonly sunriseMs: number | null;
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
    sunriseMs: times.sunrise?.getTime() ?? null,
    sunsetMs: times.sunset?.getTime() ?? null,
    isAlwaysUp: times.alwaysUp === true,
    isAlwaysDown: times.alwaysDown === true,
  };
}

/** The day of a moment by the sun of a place, `2026-11-25`: it changes at the place's own midnight. */
export function solarDay(atMs: number, { longitudeDeg }: LatLon): string {
  return new Date(atMs + longitudeDeg * 240_000).toISOString().slice(0, 10);
}
