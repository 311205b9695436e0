import { describe, expect, it } from 'vitest';
import { AS_PUBLISHED, beginBracketing, bracket, headingOf } from '../bench/track-bracketing.ts';
import type { Bracketing } from '../bench/track-bracketing.ts';

const HABITS = { ...AS_PUBLISHED, thresholdDots: 1 };

/** The needle at each minute, degrees off, right positive; what is flown, off the course. */
function flown(offsDeg: readonly number[], begun?: Bracketing): number[] {
  const [first = 0, ...rest] = offsDeg;
  const sight = (offDeg: number, minute: number) => ({
    atS: 60 * minute,
    offDeg,
    isOnStop: Math.abs(offDeg) >= 10,
  });
  const bracketing = begun ?? beginBracketing(0, { ...sight(first, 0), isOnStop: false }, HABITS);
  const headings = begun ? [bracket(begun, sight(first, 0), HABITS)] : [headingOf(bracketing)];
  return [...headings, ...rest.map((off, at) => bracket(bracketing, sight(off, at + 1), HABITS))];
}

describe('the bracketing pilot of the bench (FAA-H-8083-15B, Instrument Flying Handbook, page 9-14)', () => {
  it('turns 20 degrees into a needle that leaves, and takes out half when it is back', () => {
    expect(flown([0, -2, -1, 0])).toEqual([0, -20, -20, -10]);
  });

  it('intercepts at twice the difference until the needle centres, then flies the course', () => {
    expect(flown([-15, -10, -4, 0])).toEqual([-30, -30, -30, 0]);
  });

  it.each([
    [3, 20],
    [45, 90],
    [60, 90],
  ])('%i degrees off, intercepts at %i: not below 20, not above 90', (off, angle) => {
    expect(flown([off])).toEqual([angle]);
  });
});

describe('its ladder of corrections ("Insights: the funnel", AOPA Flight Training, February 1999)', () => {
  it('halves on course, then stays within 5 degrees, then 2', () => {
    const headings = flown([0, 2, 0, 2, 0, 2, 0, 2, 0]);
    expect(headings).toEqual([0, 20, 10, 20, 15, 20, 17.5, 19.5, 18.5]);
  });

  it('takes 40 degrees where 20 do not hold', () => {
    expect(flown([0, 2, 4, 3, 0])).toEqual([0, 20, 40, 40, 20]);
  });
});

describe("a tracking log (FAA-H-8083-25, Pilot's Handbook of Aeronautical Knowledge, figure 16-32)", () => {
  it('course 350, needle right: 360 proves too much when it goes left, then 355 is held', () => {
    const begun: Bracketing = {
      ...beginBracketing(350, { atS: 0, offDeg: 0, isOnStop: false }, HABITS),
      referenceDeg: 360,
      correctionDeg: 10,
    };
    expect(flown([-2, 0], begun)).toEqual([350, 355]);
  });
});
