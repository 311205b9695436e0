import { describe, expect, test } from 'vitest';
import { airPath } from '../../src/track/air-path.ts';
import { flown } from '../../src/track/told-path.ts';

/** North for 30 s, then east: told at 30 s, begun at 35 s, on the new heading at 65 s (3 degrees a second). */
const PLAN = { headingDeg: 0, holdS: 30, thenHeadingDeg: 90 };

describe('a heading read in the turn that was told (standard rate, 3 degrees a second: FAA-H-8083-15B)', () => {
  test('puts the start of the turn where it ends on that heading', () => {
    // Foreseen at 50 s: 45 degrees. Read 30: the pilot began 5 s later.
    const { path, headingDeg } = flown(0, PLAN, 30, 50);
    expect(headingDeg).toBe(30);
    expect(path.endHeadingDeg).toBeCloseTo(30, 9);
    expect(path).toEqual(airPath(0, [{ atS: 0, toDeg: 0 }, { atS: 35, toDeg: 90 }], 50)); // prettier-ignore
  });

  test('counts as well where the turn was begun sooner, or is over though it should not be', () => {
    expect(flown(0, PLAN, 60, 50).path.endHeadingDeg).toBeCloseTo(60, 9);
    const over = flown(0, PLAN, 90, 60);
    expect(over.path.endHeadingDeg).toBeCloseTo(90, 9);
    expect(over.path.northS).toBeLessThan(airPath(0, [{ atS: 30, toDeg: 90 }], 60).northS);
  });

  test('counts where the turn has hardly been begun', () => {
    const { path } = flown(0, PLAN, 1, 44);
    expect(path.eastS).toBeLessThan(0.5);
    expect(path.northS).toBeGreaterThan(43.5);
  });

  test('works for a left turn through north as well', () => {
    const left = { headingDeg: 30, holdS: 30, thenHeadingDeg: 300 };
    expect(flown(30, left, 345, 52).path.endHeadingDeg).toBeCloseTo(-15, 9);
  });
});

describe('a heading that the turn does not explain', () => {
  test.each([
    { why: 'the turn was never begun', headingDeg: 0, durationS: 100 },
    { why: 'the turn went beyond the heading told', headingDeg: 130, durationS: 50 },
    { why: 'the turn went the other way', headingDeg: 330, durationS: 50 },
  ])('means that the pilot turned straight to it: $why', ({ headingDeg, durationS }) => {
    const direct = airPath(0, [{ atS: 0, toDeg: headingDeg }], durationS);
    expect(flown(0, PLAN, headingDeg, durationS)).toEqual({ path: direct, headingDeg });
  });
});
