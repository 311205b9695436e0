import fc from 'fast-check';
import { stationDeg, trueDeg, type StationDeg, type TrueDeg } from '../../src/base/bearing.ts';
import type { LatLon } from '../../src/earth/geodesic.ts';
import type { Station } from '../../src/station/station.ts';
import type { Wind } from '../../src/wind/wind.ts';

const STEPS = 2 ** 30;

/**
 * A number of the trade's range, spread evenly, its ends tried more often. Not `fc.double`: that spreads over
 * the bit patterns, so that nearly every distance would be smaller than an atom.
 */
export const within = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + ((max - min) * step) / STEPS);

/** Any angle that a sum of a few bearings can come to. */
export const anyAngle: fc.Arbitrary<number> = within(-1_500, 1_500);

export const anyTrue: fc.Arbitrary<TrueDeg> = within(0, 360).map(trueDeg);

export const anyRadial: fc.Arbitrary<StationDeg> = within(0, 360).map(stationDeg);

/** Where stations stand and light aircraft fly: not at the poles. */
export const anyPlace: fc.Arbitrary<LatLon> = fc.record({
  latitudeDeg: within(-75, 75),
  longitudeDeg: within(-180, 180),
});

export const anyWind: fc.Arbitrary<Wind> = fc.record({
  fromDegTrue: within(0, 359.999),
  speedKt: within(0, 70),
});

/** An invented station with a DME beside it. */
export const anyStation: fc.Arbitrary<Station> = fc.record({
  ident: fc.stringMatching(/^[A-Z]{3}$/),
  latitudeDeg: within(-75, 75),
  longitudeDeg: within(-180, 180),
  elevationFt: within(0, 5_000),
  declinationDegEast: within(-40, 40),
  hasDme: fc.constant(true),
});

/** Scales between 2 dots of 5 degrees and 6 dots of 2. */
export const anyScale = fc.constantFrom(
  { degreesPerDot: 2, dotsFullScale: 5 },
  { degreesPerDot: 2, dotsFullScale: 6 },
  { degreesPerDot: 5, dotsFullScale: 2 },
);
