import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trueAirspeedKt } from '../../src/wind/airspeed.ts';
import { pressureRatio } from '../../src/wind/standard-atmosphere.ts';
import { within } from './flying.ts';

const tas = (calibratedAirspeedKt: number, pressureAltitudeFt: number, temperatureC?: number) => {
  const found = trueAirspeedKt({
    calibratedAirspeedKt,
    pressureAltitudeFt,
    ...(temperatureC === undefined ? {} : { temperatureC }),
  });
  return found.ok ? found.value : NaN;
};

describe('true airspeed', () => {
  test('at sea level on a standard day it is the calibrated airspeed', () => {
    fc.assert(
      fc.property(within(20, 400), (cas) => {
        expect(tas(cas, 0)).toBeCloseTo(cas, 6);
      }),
    );
  });

  test('it grows with altitude and with temperature', () => {
    fc.assert(
      fc.property(within(40, 300), within(0, 20_000), within(-40, 30), (cas, altitude, celsius) => {
        expect(tas(cas, altitude + 500)).toBeGreaterThan(tas(cas, altitude));
        expect(tas(cas, altitude, celsius + 5)).toBeGreaterThan(tas(cas, altitude, celsius));
      }),
    );
  });

  test('the pressure falls without a step through the tropopause', () => {
    const below = pressureRatio(36_089);
    const above = pressureRatio(36_090);
    expect(below).toBeGreaterThan(above);
    expect(below - above).toBeLessThan(2e-5);
    // A fifth of the pressure at sea level: 226.32 hPa. ICAO Doc 7488, from memory.
    expect(below * 1013.25).toBeCloseTo(226.32, 1);
  });
});
