import { describe, expect, it } from 'vitest';
import { DEG_PER_RAD, wrap180 } from '../../src/base/angle.ts';
import { estimate } from '../../src/track/estimate.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import { AIRCRAFT, OUTBOUND, dated } from './ocean-legs.ts';
import type { Reading } from '../../src/track/reading.ts';

const OUT = dated(OUTBOUND);

/** Outbound with the needle on its left stop: the aircraft is right of the course, at least ten degrees. */
const onStop = (atS: number, dmeNm: number): Reading => ({
  atMs: atS * 1000,
  headingDeg: 140,
  courseSetDeg: 140,
  needleDots: -5,
  flag: 'from',
  dmeNm,
});

/** Degrees right of the course at which the readings put the aircraft. */
function rightOfCourseDeg(readings: readonly Reading[]): number {
  const { belief, scene } = estimate(readings, OUT, AIRCRAFT);
  return wrap180(belief.mean.bearingRad * DEG_PER_RAD - scene.courseDegTrue);
}

describe('a needle that rests on its stop from the first reading on', () => {
  const rest = [0, 20, 40, 60, 80].map((atS) => onStop(atS, 20 + atS / 40));

  it('tells only a side, and tells it once: the place does not creep outward', () => {
    const first = rightOfCourseDeg(rest.slice(0, 1));
    const last = rightOfCourseDeg(rest);
    expect(first).toBeGreaterThan(10);
    expect(first).toBeLessThan(25);
    expect(Math.abs(last - first)).toBeLessThan(3);
  });

  it('leaves the radial open: whatever the centred needle then shows is believed without a word', () => {
    for (const offDeg of [12, 30, 60]) {
      const centred: Reading = { ...onStop(100, 22.5), courseSetDeg: 140 + offDeg, needleDots: 0 };
      const known = estimate([...rest, centred], OUT, AIRCRAFT);
      expect(alertsOf(known)).toEqual([]);
      expect(rightOfCourseDeg([...rest, centred])).toBeGreaterThan(offDeg - 3);
      expect(rightOfCourseDeg([...rest, centred])).toBeLessThan(offDeg + 3);
    }
  });
});
