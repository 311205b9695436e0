import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Wind } from '../../src/wind/wind.ts';
import { addReading, estimate, startEstimate } from '../../src/track/estimate.ts';
import { foresee } from '../../src/track/foresee.ts';
import { guide } from '../../src/track/guide.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import { element, lowerRoot } from '../../src/track/matrix.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT } from '../unit/ocean-legs.ts';
import { FLAT_STATION, flatLeg, placeAndWind, straightFlight } from '../unit/tracked-flight.ts';
import type { FlatFlight } from '../unit/tracked-flight.ts';
import { within } from './flying.ts';

const TIMES = [0, 60, 120, 180, 240, 300];

/** A flight and the heading on which it is flown. */
interface Flown {
  readonly flight: FlatFlight;
  readonly headingDeg: number;
}

/** A straight flight somewhere near a leg to or from the station, well clear of it. */
const anyFlown: fc.Arbitrary<Flown> = fc
  .record({
    isTo: fc.boolean(),
    hasDme: fc.boolean(),
    courseDeg: fc.integer({ min: 0, max: 359 }),
    offDeg: within(-8, 8),
    rangeNm: within(18, 30),
    windToEastKt: within(-25, 25),
    windToNorthKt: within(-25, 25),
    crabDeg: fc.integer({ min: -15, max: 15 }),
  })
  .map(({ isTo, hasDme, courseDeg, offDeg, rangeNm, windToEastKt, windToNorthKt, crabDeg }) => ({
    flight: {
      leg: {
        station: { ...FLAT_STATION, hasDme },
        direction: isTo ? 'to' : 'from',
        courseDeg,
        altitudeFt: 4500,
      },
      rangeNm,
      bearingDeg: courseDeg + (isTo ? 180 : 0) + offDeg,
      windToEastKt,
      windToNorthKt,
    },
    headingDeg: (courseDeg + crabDeg + 360) % 360,
  }));

function known({ flight, headingDeg }: Flown) {
  const readings = straightFlight(flight, headingDeg, TIMES);
  return estimate(readings, flatLeg(flight.leg), AIRCRAFT);
}

/** Any reading that `checkReading` accepts, with no regard for sense. */
const anyReading: fc.Arbitrary<Reading> = fc.record(
  {
    atMs: fc.integer({ min: 0, max: 3_600_000 }),
    courseSetDeg: fc.integer({ min: 0, max: 360 }),
    flag: fc.constantFrom('to' as const, 'from' as const, 'off' as const),
    headingDeg: fc.integer({ min: 0, max: 360 }),
    needleDots: within(-5, 5),
    dmeNm: within(0, 200),
  },
  { requiredKeys: ['atMs', 'courseSetDeg', 'flag'] },
);

function everyNumber(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(everyNumber);
}

describe('an estimate', () => {
  it('turns with the whole scene', () => {
    fc.assert(
      fc.property(anyFlown, fc.constantFrom(90, 180, 270), ({ flight, headingDeg }, by) => {
        const { windToEastKt: e, windToNorthKt: n } = flight;
        const rad = (by * Math.PI) / 180;
        const turned: Flown = {
          flight: {
            ...flight,
            leg: { ...flight.leg, courseDeg: (flight.leg.courseDeg + by) % 360 },
            bearingDeg: flight.bearingDeg + by,
            windToEastKt: e * Math.cos(rad) + n * Math.sin(rad),
            windToNorthKt: n * Math.cos(rad) - e * Math.sin(rad),
          },
          headingDeg: (headingDeg + by) % 360,
        };
        const one = placeAndWind(known({ flight, headingDeg }).belief.mean);
        const other = placeAndWind(known(turned).belief.mean);
        // A flat plane about a point of the equator bends by 0.003 degrees within 40 NM.
        expect(other.east).toBeCloseTo(one.east * Math.cos(rad) + one.north * Math.sin(rad), 1);
        expect(other.windEast).toBeCloseTo(
          one.windEast * Math.cos(rad) + one.windNorth * Math.sin(rad),
          0,
        );
      }),
    );
  });

  it('is mirrored by a mirrored scene', () => {
    fc.assert(
      fc.property(anyFlown, ({ flight, headingDeg }) => {
        const mirrored: Flown = {
          flight: {
            ...flight,
            leg: { ...flight.leg, courseDeg: (360 - flight.leg.courseDeg) % 360 },
            bearingDeg: -flight.bearingDeg,
            windToEastKt: -flight.windToEastKt,
          },
          headingDeg: (360 - headingDeg) % 360,
        };
        const one = placeAndWind(known({ flight, headingDeg }).belief.mean);
        const other = placeAndWind(known(mirrored).belief.mean);
        expect(other.east).toBeCloseTo(-one.east, 3);
        expect(other.north).toBeCloseTo(one.north, 3);
        expect(other.windEast).toBeCloseTo(-one.windEast, 2);
      }),
    );
  });

  it('finds place and wind of a flight with DME to within four of its own standard deviations', () => {
    fc.assert(
      fc.property(anyFlown, ({ flight, headingDeg }) => {
        fc.pre(flight.leg.station.hasDme);
        const { belief } = known({ flight, headingDeg });
        const sdEast = Math.sqrt(element(belief.covariance, 2, 2));
        expect(Math.abs(belief.mean.windEastKt - flight.windToEastKt)).toBeLessThan(4 * sdEast);
      }),
    );
  });

  it('keeps a symmetric, positive covariance and finite numbers through any readings', () => {
    fc.assert(
      fc.property(anyFlown, fc.array(anyReading, { maxLength: 12 }), ({ flight }, readings) => {
        const leg = flatLeg(flight.leg);
        const result = estimate(readings, leg, AIRCRAFT);
        const { covariance } = result.belief;
        for (let row = 0; row < 7; row += 1) {
          expect(element(covariance, row, row)).toBeGreaterThan(0);
          expect(element(lowerRoot(covariance), row, row)).toBeGreaterThan(0);
          for (let column = 0; column < row; column += 1) {
            const one = element(covariance, row, column);
            const scale = Math.sqrt(
              element(covariance, row, row) * element(covariance, column, column),
            );
            expect(Math.abs(one - element(covariance, column, row))).toBeLessThan(1e-9 * scale);
          }
        }
        const guidance = guide(result, leg);
        const foreseen = foresee(result, leg, (result.atMs ?? 0) + 60_000);
        for (const each of everyNumber([result.belief, guidance, foreseen])) {
          expect(Number.isFinite(each)).toBe(true);
        }
        expect(guidance.whichWay.headingDeg).toBeGreaterThanOrEqual(0);
        expect(guidance.whichWay.headingDeg).toBeLessThan(360);
        expect(alertsOf(result).every(({ ask }) => ask.length > 0)).toBe(true);
      }),
    );
  });

  it('comes out the same one by one, all at once, and in any order', () => {
    const anyTimed = fc.uniqueArray(anyReading, { maxLength: 8, selector: (each) => each.atMs });
    fc.assert(
      fc.property(anyFlown, anyTimed, ({ flight }, readings) => {
        const leg = flatLeg(flight.leg);
        const start = startEstimate(leg, AIRCRAFT);
        const atOnce = estimate(readings, leg, AIRCRAFT);
        expect(readings.reduce(addReading, start)).toEqual(atOnce);
        expect([...readings].reverse().reduce(addReading, start)).toEqual(atOnce);
      }),
      { numRuns: 60 },
    );
  });

  it('does not change by a reading given twice', () => {
    fc.assert(
      fc.property(anyFlown, anyReading, ({ flight }, reading) => {
        const once = addReading(startEstimate(flatLeg(flight.leg), AIRCRAFT), reading);
        expect(addReading(once, reading)).toBe(once);
      }),
    );
  });

  it('goes on the same after it was stored as JSON', () => {
    fc.assert(
      fc.property(anyFlown, anyReading, (flown, next) => {
        const whole = known(flown);
        const stored = JSON.parse(JSON.stringify(whole)) as typeof whole;
        const later = { ...next, atMs: next.atMs + 400_000 };
        const leg = flatLeg(flown.flight.leg);
        expect(guide(addReading(stored, later), leg)).toEqual(guide(addReading(whole, later), leg));
      }),
      { numRuns: 30 },
    );
  });
});

describe('the forecast wind', () => {
  it('is the wind told before the readings know better', () => {
    const anyForecast: fc.Arbitrary<Wind> = fc.record({
      fromDegTrue: within(0, 359),
      speedKt: within(5, 40),
    });
    fc.assert(
      fc.property(anyFlown, anyForecast, ({ flight, headingDeg }, forecast) => {
        const first = straightFlight(flight, headingDeg, [0]);
        const leg = flatLeg(flight.leg);
        const { wind } = guide(estimate(first, leg, AIRCRAFT, forecast), leg).seen;
        expect(wind?.speedKt).toBeCloseTo(forecast.speedKt, 6);
      }),
    );
  });
});
