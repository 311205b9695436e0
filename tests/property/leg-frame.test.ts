import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cosDeg, sinDeg, turnDeg, wrap180 } from '../../src/base/angle.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { geodesicTo, placeAt } from '../../src/earth/geodesic.ts';
import { variationDegEast } from '../../src/earth/variation.ts';
import { datedLeg, type DatedLeg } from '../../src/leg/leg-frame.ts';
import { convergenceDegAt, variationNear } from '../../src/leg/local-norths.ts';
import type { Station } from '../../src/station/station.ts';
import { anyStation, anyTrue, within } from './flying.ts';

function framed(station: Station): DatedLeg {
  const altitudeFt = station.elevationFt + 5_000;
  const leg = datedLeg({ station, direction: 'to', courseDeg: 0, altitudeFt }, '2026-11-25');
  if (!leg.ok) throw new Error(leg.problem[0]?.expected);
  return leg.value;
}

describe('the frame about a station, against geographiclib', () => {
  test('true north at the aircraft is known to 0.001 degrees within 100 NM', () => {
    fc.assert(
      fc.property(anyStation, anyTrue, within(0, 100), (station, azimuthDeg, nm) => {
        const { azimuthThereDeg } = geodesicTo(station, placeAt(station, azimuthDeg, nm));
        const convergenceDeg = convergenceDegAt(
          framed(station),
          nm * sinDeg(azimuthDeg),
          nm * cosDeg(azimuthDeg),
        );
        fc.pre(nm > 0.001);
        // The geodesic is a straight line in the frame: it arrives in the direction in which it left.
        expect(Math.abs(turnDeg(azimuthDeg, azimuthThereDeg + convergenceDeg))).toBeLessThan(0.001);
      }),
    );
  });

  test('east of a northern station true north leans to the left, and nowhere over it', () => {
    const station: Station = {
      ident: 'QEV',
      latitudeDeg: 46.5,
      longitudeDeg: -21.25,
      elevationFt: 410,
      declinationDegEast: -7,
      hasDme: true,
    };
    const norths = framed(station);
    expect(convergenceDegAt(norths, 0, 0)).toBe(0);
    expect(convergenceDegAt(norths, 50, 0)).toBeLessThan(-0.5);
    expect(convergenceDegAt(norths, -50, 0)).toBeCloseTo(-convergenceDegAt(norths, 50, 0), 9);
    expect(convergenceDegAt(norths, 0, 80)).toBeCloseTo(0, 9);
    const southern = { ...norths, stationLatitudeDeg: -46.5 };
    expect(convergenceDegAt(southern, 50, 0)).toBeCloseTo(-convergenceDegAt(norths, 50, 0), 9);
  });
});

describe('variation near a station, against WMM2025 itself', () => {
  test('between 50 south and 60 north it is within 0.3 degrees at 50 NM', () => {
    const anyUsual = anyStation.map((station) => ({
      ...station,
      latitudeDeg: 5 + station.latitudeDeg * (55 / 75),
    }));
    fc.assert(
      fc.property(anyUsual, anyTrue, within(0, 50), (station, azimuthDeg, nm) => {
        const near = variationNear(
          framed(station),
          nm * sinDeg(azimuthDeg),
          nm * cosDeg(azimuthDeg),
        );
        const there = placeAt(station, azimuthDeg, nm);
        const model = variationDegEast(there, '2026-11-25', station.elevationFt + 5_000);
        expect(model.ok ? Math.abs(wrap180(near - model.value)) : NaN).toBeLessThan(0.3);
      }),
    );
  });

  test('at the station it is the model’s own', () => {
    fc.assert(
      fc.property(anyStation, (station) => {
        const model = variationDegEast(station, '2026-11-25', station.elevationFt + 5_000);
        expect(variationNear(framed(station), 0, 0)).toBe(model.ok ? model.value : NaN);
      }),
    );
  });
});

describe('the course', () => {
  test('is true at the station by its own declination, whatever the variation there', () => {
    fc.assert(
      fc.property(anyStation, within(0, 360), (station, courseDeg) => {
        const altitudeFt = station.elevationFt + 5_000;
        const leg = datedLeg({ station, direction: 'from', courseDeg, altitudeFt }, '2026-11-25');
        const courseDegTrue = leg.ok ? leg.value.courseDegTrue : NaN;
        expect(turnDeg(courseDegTrue, courseDeg + station.declinationDegEast)).toBeCloseTo(0, 9);
        expect(courseDegTrue).toBe(trueDeg(courseDeg + station.declinationDegEast));
      }),
    );
  });
});
