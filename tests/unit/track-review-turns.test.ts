import { describe, expect, it } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { INBOUND, QEV, dated } from './ocean-legs.ts';
import { after } from './panel-rows.ts';
import type { Row } from './panel-rows.ts';

const IN = dated(INBOUND);
const FORECAST = { fromDegTrue: 330, speedKt: 15 };

describe('an intercept heading', () => {
  it('comes with the time at which the line is reached and the heading that keeps it', () => {
    // 1.5 dots left at 11.2 NM is 0.585 NM right of the line.
    const { whichWay } = after(IN, [[112, -1.5, 'to', 11.2]], { wind: FORECAST });
    const lineDeg = after(IN, [[112, 0, 'to', 11.2]], { wind: FORECAST }).whichWay.headingDeg;
    const cutDeg = Math.abs(turnDeg(whichWay.headingDeg, whichWay.thenHeadingDeg));
    expect(Math.abs(turnDeg(lineDeg, whichWay.thenHeadingDeg))).toBeLessThanOrEqual(12);
    expect(cutDeg).toBeGreaterThanOrEqual(20);
    const throughAirS = (0.585 * 3600) / (95 * Math.sin((cutDeg * Math.PI) / 180));
    expect(whichWay.holdS).toBeGreaterThan(0.6 * throughAirS);
    expect(whichWay.holdS).toBeLessThan(1.4 * throughAirS + 10);
  });

  it('far from the line is held for minutes before the turn onto it', () => {
    const { whichWay } = after(IN, [[112, -4, 'to', 25]], { wind: FORECAST });
    expect(whichWay.thenHeadingDeg).not.toBe(whichWay.headingDeg);
    // 3.5 NM at 95 kt and 60 degrees or less: 150 s or more.
    expect(whichWay.holdS).toBeGreaterThan(150);
    expect(whichWay.holdS % 5).toBe(0);
  });

  it('on the line stays the only heading', () => {
    const { whichWay } = after(IN, [[112, 0, 'to', 11.2]]);
    expect(whichWay.thenHeadingDeg).toBe(whichWay.headingDeg);
  });
});

describe('the test of the needle with the OBS', () => {
  const steady = (fromNm: number, count: number, dots = 0): Row[] =>
    Array.from({ length: count }, (_, index) => [112, dots, 'to', fromNm - 1.6 * index]);
  const asked = (rows: readonly Row[]): boolean =>
    after(IN, rows).nextQuestion === 'turn-obs-three-left';

  it('is asked for at every third reading at most', () => {
    const counts = [1, 2, 3, 4, 5, 6, 7].filter((count) => asked(steady(25, count)));
    expect(counts).toEqual([3, 6]);
  });

  it('is not asked for again once it was done', () => {
    const rows = steady(25, 5);
    expect(asked([...rows, [112, 1.5, 'to', 17, 109]])).toBe(false);
  });

  it('is not asked for close to the station', () => {
    // 3 minutes at 95 kt are 4.75 NM.
    expect(asked(steady(7.8, 3))).toBe(false);
    expect(asked(steady(9.8, 3))).toBe(true);
  });

  it('is not asked for while the needle is far out', () => {
    expect(asked(steady(25, 3, -3.5))).toBe(false);
  });
});

describe('a needle that rests four dots out without DME', () => {
  it('on an intercept far out is no fault', () => {
    const leg = dated({ ...INBOUND, station: { ...QEV, hasDme: false } });
    const { kinds } = after(leg, [
      [82, -4, 'to'],
      [82, -4, 'to'],
      [82, -4, 'to'],
    ]);
    expect(kinds).toEqual([]);
  });
});

describe('the comparison of direction indicator and compass', () => {
  // A row a minute: the sixteenth reading comes 15 min after the first.
  const steady = (count: number): Row[] =>
    Array.from({ length: count }, (_, index) => [112, 0, 'to', 58 - 1.6 * index]);

  it('is asked for once in a quarter of an hour, apart from the test of the needle', () => {
    const counts = Array.from({ length: 32 }, (_, index) => index + 1).filter(
      (count) => after(IN, steady(count)).nextQuestion === 'compare-compass',
    );
    expect(counts).toEqual([16, 31]);
  });

  it('is not asked for close to the station', () => {
    const late = Array.from({ length: 16 }, (_, index): Row => [112, 0, 'to', 28 - 1.6 * index]);
    expect(after(IN, late).nextQuestion).toBeNull();
  });
});
