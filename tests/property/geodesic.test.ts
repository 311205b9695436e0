import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { geodesicTo, placeAt } from '../../src/earth/geodesic.ts';
import { anyPlace, anyTrue, within } from './flying.ts';

describe('geodesics', () => {
  test('a place found by direction and distance lies in that direction at that distance', () => {
    fc.assert(
      fc.property(anyPlace, anyTrue, within(0.01, 300), (from, azimuthDeg, nm) => {
        const line = geodesicTo(from, placeAt(from, azimuthDeg, nm));
        expect(line.distanceNm).toBeCloseTo(nm, 8);
        expect(turnDeg(azimuthDeg, line.azimuthDeg)).toBeCloseTo(0, 5);
      }),
    );
  });

  test('the way back is as long and starts opposite to the arrival', () => {
    fc.assert(
      fc.property(anyPlace, anyTrue, within(0.01, 300), (from, azimuthDeg, nm) => {
        const there = placeAt(from, azimuthDeg, nm);
        const out = geodesicTo(from, there);
        const back = geodesicTo(there, from);
        expect(back.distanceNm).toBeCloseTo(out.distanceNm, 9);
        expect(Math.abs(turnDeg(out.azimuthThereDeg, back.azimuthDeg))).toBeCloseTo(180, 5);
      }),
    );
  });

  test('a place is 0 NM from itself', () => {
    fc.assert(
      fc.property(anyPlace, (place) => {
        expect(geodesicTo(place, place).distanceNm).toBe(0);
      }),
    );
  });
});
