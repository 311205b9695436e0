import { describe, expect, it } from 'vitest';
import { checkReading } from '../../src/track/check-reading.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, QEV } from './ocean-legs.ts';

const GOOD: Reading = {
  atMs: 0,
  headingDeg: 112,
  courseSetDeg: 112,
  needleDots: -1.5,
  flag: 'to',
  dmeNm: 11.2,
};

describe('a reading', () => {
  it('is accepted as it is when a panel can show it', () => {
    expect(checkReading(GOOD, AIRCRAFT)).toEqual({ ok: true, value: GOOD });
  });

  it('may leave out everything but time, course set and flag', () => {
    expect(checkReading({ atMs: 0, courseSetDeg: 0, flag: 'off' }, AIRCRAFT).ok).toBe(true);
  });

  it.each([
    ['needleDots', 5.5],
    ['needleDots', Number.NaN],
    ['dmeNm', -0.1],
    ['dmeNm', 201],
    ['headingDeg', 361],
    ['headingDeg', -1],
    ['courseSetDeg', 400],
    ['atMs', Number.POSITIVE_INFINITY],
  ])('is refused by the name of its field: %s of %d', (name, value) => {
    const result = checkReading({ ...GOOD, [name]: value }, AIRCRAFT, 'readings.3');
    expect(result).toMatchObject({
      ok: false,
      problem: [{ field: `readings.3.${name}`, got: String(value) }],
    });
  });

  it('is held to the scale of the aircraft that it was read in', () => {
    const small = { ...AIRCRAFT, dotsFullScale: 2, degreesPerDot: 5 };
    expect(checkReading({ ...GOOD, needleDots: 3 }, small).ok).toBe(false);
    expect(checkReading({ ...GOOD, needleDots: 2 }, small).ok).toBe(true);
  });

  it('names every field that is wrong, not only the first', () => {
    const result = checkReading({ ...GOOD, needleDots: 9, dmeNm: 999 }, AIRCRAFT);
    expect(result.ok ? [] : result.problem.map((each) => each.field)).toEqual([
      'reading.needleDots',
      'reading.dmeNm',
    ]);
  });

  it('has the station of a cross-bearing checked too', () => {
    const result = checkReading({ ...GOOD, station: { ...QEV, latitudeDeg: 95 } }, AIRCRAFT);
    expect(result.ok ? '' : result.problem[0]?.field).toBe('reading.station.latitudeDeg');
  });
});
