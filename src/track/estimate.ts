import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Wind } from '../wind/wind.ts';
import type { Estimate } from './estimate-record.ts';
import type { Reading } from './reading.ts';

export type { Estimate } from './estimate-record.ts';

/**
 * What is known before the first reading of a leg: nothing but the forecast, or what another leg's
 * estimate carries over (place, wind, instrument errors).
 */
export function startEstimate(
  leg: DatedLeg,
  aircraft: Aircraft,
  wind?: Wind,
  carried?: Estimate,
): Estimate {
  return {
    leg,
    aircraft,
    forecastWind: wind ?? null,
    readings: [],
    belief: null,
    atMs: carried?.atMs ?? null,
    headingDeg: carried?.headingDeg ?? null,
    plan: carried?.plan ?? null,
    alerts: [],
  };
}

/** The estimate with one more reading; a reading out of order is sorted in, a duplicate changes nothing. */
export function addReading(estimate: Estimate, reading: Reading): Estimate {
  return {
    ...estimate,
    readings: [...estimate.readings, reading],
    atMs: reading.atMs,
    headingDeg: reading.headingDeg ?? estimate.headingDeg,
  };
}

/** The estimate after all readings: the fold of `addReading` over them in time order. */
export function estimate(
  readings: readonly Reading[],
  leg: DatedLeg,
  aircraft: Aircraft,
  wind?: Wind,
  carried?: Estimate,
): Estimate {
  const inOrder = [...readings].sort((one, other) => one.atMs - other.atMs);
  return inOrder.reduce(addReading, startEstimate(leg, aircraft, wind, carried));
}
