import { describe, expect, it } from 'vitest';
import { estimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND, dated } from './ocean-legs.ts';
import {
  FIRST,
  MINUTES,
  NORTHBOUND,
  flatLeg,
  panelAfter,
  straightFlight,
  without,
} from './tracked-flight.ts';

const IN = dated(INBOUND);

describe('a slip of the tongue', () => {
  const leg = flatLeg(NORTHBOUND.leg);
  const before = straightFlight(NORTHBOUND, 348, MINUTES);
  const right = panelAfter(NORTHBOUND, 348, 360);

  it('is kept out, said back, and asked for again', () => {
    const wrong = { ...right, dmeNm: 71 };
    const known = estimate([...before, wrong], leg, AIRCRAFT);
    expect(Math.exp(known.belief.mean.lnRange)).toBeLessThan(12);
    const alerts = alertsOf(known);
    expect(alerts.map((each) => each.kind)).toEqual(['readings-disagree']);
    expect(alerts[0]?.ask).toContain('71');
    expect(guide(known, leg).nextQuestion).toBe('repeat-reading');
  });

  it('is forgotten when the next reading fits', () => {
    const wrong = { ...right, needleDots: -4.5 };
    const after = panelAfter(NORTHBOUND, 348, 420);
    const known = estimate([...before, wrong, after], leg, AIRCRAFT);
    expect(known.doubt).toBeNull();
    expect(alertsOf(known)).toEqual([]);
  });

  it('that turns out to be true is believed', () => {
    const start = { ...panelAfter(NORTHBOUND, 348, 0), dmeNm: 12 };
    const known = estimate(
      [start, ...straightFlight(NORTHBOUND, 348, [60, 120, 180])],
      leg,
      AIRCRAFT,
    );
    expect(known.doubt).toBeNull();
    expect(Math.exp(known.belief.mean.lnRange)).toBeCloseTo(15.3, 0);
  });

  it('after slip leaves no picture, and says so', () => {
    const slips = [
      { ...right, dmeNm: 71, needleDots: 4 },
      { ...panelAfter(NORTHBOUND, 348, 420), dmeNm: 33, needleDots: -4 },
    ];
    const known = estimate([...before, ...slips], leg, AIRCRAFT);
    expect(guide(known, leg).phase).toBe('lost');
    expect(guide(known, leg).nextQuestion).toBe('centre-needle-from');
    expect(alertsOf(known).map((each) => each.kind)).toContain('readings-disagree');
  });

  it('in a full deflection to the wrong side is noticed', () => {
    const known = estimate([...before, { ...right, needleDots: -5 }], leg, AIRCRAFT);
    expect(alertsOf(known).map((each) => each.kind)).toEqual(['readings-disagree']);
  });
});

describe('a fault of the panel', () => {
  const leg = flatLeg(NORTHBOUND.leg);
  const before = straightFlight(NORTHBOUND, 348, MINUTES);
  const later = [360, 420, 480].map((atS) => panelAfter(NORTHBOUND, 348, atS));
  const kindsAfter = (spoiled: readonly Reading[]): string[] =>
    alertsOf(estimate([...before, ...spoiled], leg, AIRCRAFT)).map((each) => each.kind);

  it('of none raises no alert', () => {
    expect(kindsAfter(later)).toEqual([]);
  });

  it('a DME that stands still is told, and the place kept', () => {
    const still = later.map((each) => ({ ...each, dmeNm: before.at(-1)?.dmeNm ?? 0 }));
    expect(kindsAfter(still)).toContain('dme-not-moving');
    const known = estimate([...before, ...still], leg, AIRCRAFT);
    expect(Math.exp(known.belief.mean.lnRange)).toBeLessThan(9);
  });

  it('a DME on another frequency is told', () => {
    const other = later.map((each, index) => ({ ...each, dmeNm: 37 + 0.4 * index }));
    expect(kindsAfter(other)).toContain('dme-disagrees');
  });

  it('needle and DME of another station are told', () => {
    const other = later.map((each, index) => ({
      ...each,
      dmeNm: 41 + 1.1 * index,
      needleDots: -4,
    }));
    expect(kindsAfter(other)).toContain('wrong-station');
  });

  it('a flag that contradicts the place is told at once, and its needle not used', () => {
    const contradicting = { ...panelAfter(NORTHBOUND, 348, 360), flag: 'from' as const };
    expect(kindsAfter([contradicting])).toContain('reverse-sensing');
  });

  it('OFF far from the cone is told at once', () => {
    const off = without(
      { ...panelAfter(NORTHBOUND, 348, 360), flag: 'off' as const },
      'needleDots',
    );
    expect(kindsAfter([off])).toEqual(['flag-off']);
  });

  it('OFF in an intercept lets the turn that ends it stand, at its time', () => {
    // Two miles left of the line, cutting it: a turn onto it is told for later.
    const start = { ...NORTHBOUND, bearingDeg: NORTHBOUND.bearingDeg - 4 };
    const before = straightFlight(start, 20, [0, 60, 120, 180, 240, 300]);
    const told = estimate(before, leg, AIRCRAFT).plan;
    if (told?.holdS == null) throw new Error('no second heading was told');
    const off = (afterS: number): Reading => ({
      atMs: 300_000 + afterS * 1000,
      headingDeg: told.headingDeg,
      courseSetDeg: 0,
      flag: 'off',
    });
    const { holdS, headingDeg, thenHeadingDeg } = told;
    const early = estimate([...before, off(holdS - 10)], leg, AIRCRAFT).plan;
    expect(early).toEqual({ headingDeg, holdS: 10, thenHeadingDeg });
    const late = estimate([...before, off(holdS - 10), off(holdS + 5)], leg, AIRCRAFT).plan;
    expect(late).toEqual({ headingDeg: thenHeadingDeg, holdS: null, thenHeadingDeg });
  });

  it('an OBS set to the reciprocal is told when its needle would be followed', () => {
    const backwards = panelAfter({ ...NORTHBOUND, bearingDeg: 184 }, 348, 0, 180);
    expect(alertsOf(estimate([backwards], leg, AIRCRAFT)).map((each) => each.kind)).toContain(
      'reverse-sensing',
    );
  });

  it('a needle that does not answer the OBS is told', () => {
    const wavy = [0, 60, 120, 180, 240, 300].map((atS, index) => ({
      ...panelAfter(NORTHBOUND, 348, atS),
      needleDots: index % 2 === 0 ? 0.5 : -0.5,
    }));
    const dead = [360, 420, 480, 540].map((atS, index) => ({
      ...panelAfter(NORTHBOUND, 348, atS, index % 2 === 0 ? 355 : 0),
      needleDots: 0,
    }));
    const known = estimate([...wavy, ...dead], leg, AIRCRAFT);
    expect(alertsOf(known).map((each) => each.kind)).toContain('needle-not-moving');
  });

  it('beyond the horizon of the antenna is told', () => {
    const far = { ...FIRST, dmeNm: 150 };
    expect(alertsOf(estimate([far], IN, AIRCRAFT)).map((each) => each.kind)).toContain(
      'outside-reception',
    );
  });
});
