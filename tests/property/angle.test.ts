import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  asinDeg,
  cosDeg,
  directionDeg,
  reciprocalDeg,
  sinDeg,
  turnDeg,
  wrap180,
  wrap360,
} from '../../src/base/angle.ts';
import { anyAngle, within } from './flying.ts';

describe('angles', () => {
  test('a direction lies in 0 <= x < 360 and is never minus nothing', () => {
    fc.assert(
      fc.property(anyAngle, (angle) => {
        const wrapped = wrap360(angle);
        return wrapped >= 0 && wrapped < 360 && !Object.is(wrapped, -0);
      }),
    );
    expect(wrap360(-1e-15)).toBe(0);
    expect(wrap360(-360)).toBe(0);
    expect(wrap360(360)).toBe(0);
  });

  test('a turn lies in -180 < x <= 180', () => {
    fc.assert(
      fc.property(anyAngle, (angle) => {
        const wrapped = wrap180(angle);
        return wrapped > -180 && wrapped <= 180;
      }),
    );
    expect(wrap180(-180)).toBe(180);
  });

  test('whole turns change nothing', () => {
    fc.assert(
      fc.property(anyAngle, fc.integer({ min: -3, max: 3 }), (angle, turns) => {
        expect(wrap180(wrap360(angle + 360 * turns) - wrap360(angle))).toBeCloseTo(0, 9);
      }),
    );
  });

  test('a direction and the turn to another lead to the other', () => {
    fc.assert(
      fc.property(anyAngle, anyAngle, (from, to) => {
        expect(wrap180(from + turnDeg(from, to) - to)).toBeCloseTo(0, 9);
      }),
    );
  });

  test('the reciprocal of the reciprocal is the direction itself', () => {
    fc.assert(
      fc.property(anyAngle, (angle) => {
        expect(wrap180(reciprocalDeg(reciprocalDeg(angle)) - angle)).toBeCloseTo(0, 9);
      }),
    );
  });

  test('a vector made from a direction has that direction', () => {
    fc.assert(
      fc.property(anyAngle, within(0.01, 500), (angle, length) => {
        const direction = directionDeg(length * sinDeg(angle), length * cosDeg(angle));
        expect(wrap180(direction - angle)).toBeCloseTo(0, 9);
      }),
    );
    expect(directionDeg(0, 0)).toBe(0);
  });

  test('a ratio that rounding has carried past one still has an arc sine', () => {
    expect(asinDeg(1 + 1e-12)).toBe(90);
    expect(asinDeg(-1 - 1e-12)).toBe(-90);
  });
});
