import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adviceOf } from '../../src/procedure/advise.ts';
import { rounded } from '../../src/procedure/rounded.ts';
import { estimate } from '../../src/track/estimate.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND, dated, guidance } from './ocean-legs.ts';

const LEG = dated(INBOUND);

function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => numbersIn(each, `${path}.${key}`));
}

describe('the numbers of an answer', () => {
  it('are no finer than they mean, and never minus zero', () => {
    const readings = fc.array(
      fc.record({
        needleDots: fc.integer({ min: -10, max: 10 }).map((halves) => halves / 2),
        dmeNm: fc.integer({ min: 10, max: 400 }).map((tenths) => tenths / 10),
        headingDeg: fc.integer({ min: 0, max: 359 }),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(readings, (given) => {
        const read = given.map((each, i): Reading => ({
          ...each,
          atMs: i * 60_000,
          courseSetDeg: 112,
          flag: 'to',
        }));
        const known = estimate(read, LEG, AIRCRAFT);
        const manner = { decimalWord: 'decimal' } as const;
        const { say, why, ...numbers } = adviceOf(known, LEG, AIRCRAFT, {
          identConfirmed: null,
          manner,
        });
        expect(`${say}${why}`).not.toContain('minus');
        for (const [path, value] of numbersIn(numbers)) {
          const digits = path.endsWith('Nm')
            ? 100
            : /(Kt|driftDeg|fromDegMag)$/.test(path)
              ? 10
              : 1;
          expect([path, Object.is(value, -0)]).toEqual([path, false]);
          expect([path, Math.round(value * digits) / digits]).toEqual([path, value]);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('leave a direction that rounds up to north at zero', () => {
    const wind = { fromDegMag: 359.97, speedKt: 10, sdKt: 2 };
    const way = { ...guidance().whichWay, headingDeg: 359.6, thenHeadingDeg: 0 };
    const given = guidance({ whichWay: way, seen: { ...guidance().seen, wind } });
    expect(rounded(given).seen.wind?.fromDegMag).toBe(0);
    expect(rounded(given).whichWay.headingDeg).toBe(0);
  });

  it('that are not known stay so', () => {
    const unknown = { crossTrackNm: null, crossTrackSdNm: null, driftDeg: null, wind: null };
    expect(rounded(guidance({ seen: unknown })).seen).toEqual(unknown);
  });
});
