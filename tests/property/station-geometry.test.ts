import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { coneRadiusNm } from '../../src/station/cone.ts';
import { lineOfSightNm } from '../../src/station/line-of-sight.ts';
import { stationFromTrue, trueFromStation } from '../../src/station/radial.ts';
import { groundFromSlant, slantFromGround } from '../../src/station/slant-range.ts';
import { magneticFromTrue, trueFromMagnetic } from '../../src/earth/norths.ts';
import { anyRadial, anyTrue, within } from './flying.ts';

const anyDeclination = within(-180, 180);

describe('slant range', () => {
  test('ground to slant to ground comes back', () => {
    fc.assert(
      fc.property(within(0.5, 200), within(0, 45_000), (groundNm, heightFt) => {
        const back = groundFromSlant(slantFromGround(groundNm, heightFt), heightFt);
        expect(back).toBeCloseTo(groundNm, 6);
      }),
    );
  });

  test('slant is never less than ground distance nor than height', () => {
    fc.assert(
      fc.property(within(0, 200), within(0, 45_000), (groundNm, heightFt) => {
        const slantNm = slantFromGround(groundNm, heightFt);
        expect(slantNm).toBeGreaterThanOrEqual(groundNm);
        expect(slantNm).toBeGreaterThanOrEqual(heightFt / 6_077);
      }),
    );
  });

  test('a slant range that is less than the height is overhead, never NaN', () => {
    fc.assert(
      fc.property(within(0, 7), within(45_000, 60_000), (slantNm, heightFt) => {
        expect(groundFromSlant(slantNm, heightFt)).toBe(0);
      }),
    );
  });

  test('over a round Earth, radius 3,440 NM, it shows at most 0.03 NM more below 10,000 ft', () => {
    fc.assert(
      fc.property(within(0, 100), within(0, 10_000), (groundNm, heightFt) => {
        const aloftNm = 3_440 + heightFt / 6_076.1155;
        const eastNm = aloftNm * Math.sin(groundNm / 3_440);
        const upNm = aloftNm * Math.cos(groundNm / 3_440) - 3_440;
        const round = Math.hypot(eastNm, upNm);
        expect(Math.abs(round - slantFromGround(groundNm, heightFt))).toBeLessThan(0.03);
      }),
    );
  });

  test('an antenna above the aircraft counts like one below it', () => {
    expect(slantFromGround(3, -6_076)).toBe(slantFromGround(3, 6_076));
    expect(groundFromSlant(3, -6_076)).toBe(groundFromSlant(3, 6_076));
  });
});

describe('norths', () => {
  test('station to true and back comes back', () => {
    fc.assert(
      fc.property(anyRadial, anyDeclination, (radial, declinationDegEast) => {
        const station = { declinationDegEast };
        const back = stationFromTrue(trueFromStation(radial, station), station);
        expect(turnDeg(radial, back)).toBeCloseTo(0, 9);
      }),
    );
  });

  test('true to magnetic and back comes back', () => {
    fc.assert(
      fc.property(anyTrue, anyDeclination, (direction, variation) => {
        const back = trueFromMagnetic(magneticFromTrue(direction, variation), variation);
        expect(turnDeg(direction, back)).toBeCloseTo(0, 9);
      }),
    );
  });
});

describe('cone and line of sight', () => {
  test('both grow with height and are nothing at and below the antenna', () => {
    fc.assert(
      fc.property(within(0, 40_000), (heightFt) => {
        expect(coneRadiusNm(heightFt + 100)).toBeGreaterThan(coneRadiusNm(heightFt));
        expect(lineOfSightNm(heightFt + 100, 0)).toBeGreaterThan(lineOfSightNm(heightFt, 0));
      }),
    );
    expect(coneRadiusNm(-500)).toBe(0);
    expect(lineOfSightNm(-500, -1)).toBe(0);
  });

  test('each of the two sees the other from the same distance', () => {
    fc.assert(
      fc.property(within(0, 40_000), within(0, 40_000), (one, other) => {
        expect(lineOfSightNm(one, other)).toBeCloseTo(lineOfSightNm(other, one), 9);
      }),
    );
  });
});
