import { expect } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';

/** Holds a number to a published one within the tolerance that its source's rounding leaves. */
export function expectNear(
  value: number,
  published: number,
  tolerance: number,
  item: string,
): void {
  expect(
    Math.abs(value - published),
    `${item}: ${value}, published ${published}`,
  ).toBeLessThanOrEqual(tolerance);
}

/** The same for directions, where 359.9 and 0.1 are neighbours. */
export function expectNearDeg(
  value: number,
  published: number,
  tolerance: number,
  item: string,
): void {
  expect(
    Math.abs(turnDeg(published, value)),
    `${item}: ${value}, published ${published}`,
  ).toBeLessThanOrEqual(tolerance);
}
