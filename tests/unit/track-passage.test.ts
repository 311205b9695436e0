import { describe, expect, it } from 'vitest';
import { estimate, startEstimate } from '../../src/track/estimate.ts';
import { guide } from '../../src/track/guide.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND, XUN, dated } from './ocean-legs.ts';
import {
  FIRST,
  FLAT_STATION,
  MINUTES,
  NORTHBOUND,
  flatLeg,
  panelAfter,
  placeAndWind,
  straightFlight,
  without,
} from './tracked-flight.ts';
import type { FlatFlight } from './tracked-flight.ts';

const IN = dated(INBOUND);

describe('the station passage', () => {
  const approach = (hasDme: boolean): FlatFlight => ({
    ...NORTHBOUND,
    leg: { ...NORTHBOUND.leg, station: { ...FLAT_STATION, hasDme } },
    rangeNm: 8,
    bearingDeg: 180.3,
    windToEastKt: 0,
  });

  it.each([true, false])('ends the leg when the flag turns, with DME: %s', (hasDme) => {
    const flight = approach(hasDme);
    const leg = flatLeg(flight.leg);
    // 8 NM at 95 kt: overhead after 303 s.
    const readings = straightFlight(flight, 0, [0, 60, 120, 180, 240]);
    const past = panelAfter(flight, 0, 390);
    expect(past.flag).toBe('from');
    const known = estimate([...readings, past], leg, AIRCRAFT);
    const { phase, howFar } = guide(known, leg);
    expect(phase).toBe('passage');
    expect(howFar.toGoNm).toBe(0);
    const truth = (390 - 303) * (95 / 3600);
    const { north } = placeAndWind(known.belief.mean);
    expect(north).toBeGreaterThan(0);
    expect(north).toBeLessThan(2 * truth);
  });

  it('holds the wind-corrected heading close in, whatever the needle does', () => {
    const flight = approach(true);
    const leg = flatLeg(flight.leg);
    const readings = straightFlight(flight, 0, [0, 60, 120, 180, 240]);
    const wild = { ...panelAfter(flight, 0, 270), needleDots: 3 };
    const { phase, whichWay } = guide(estimate([...readings, wild], leg, AIRCRAFT), leg);
    expect(phase).toBe('near-station');
    expect(Math.min(whichWay.headingDeg, 360 - whichWay.headingDeg)).toBeLessThanOrEqual(5);
  });

  it('in the cone needs no needle: OFF is the passage, not a failure', () => {
    const flight = approach(true);
    const leg = flatLeg(flight.leg);
    const readings = straightFlight(flight, 0, [0, 60, 120, 180, 240]);
    const off = without({ ...panelAfter(flight, 0, 300), flag: 'off' as const }, 'needleDots');
    const known = estimate([...readings, off], leg, AIRCRAFT);
    expect(guide(known, leg).phase).toBe('passage');
    expect(alertsOf(known)).toEqual([]);
  });

  it('carries the wind over: the first outbound heading already includes it', () => {
    const leg = flatLeg(NORTHBOUND.leg);
    const inbound = estimate(
      straightFlight(NORTHBOUND, 348, [...MINUTES, 480, 600]),
      leg,
      AIRCRAFT,
    );
    const outLeg = flatLeg({ ...NORTHBOUND.leg, direction: 'from', courseDeg: 90, endDmeNm: 14 });
    const outbound = startEstimate(outLeg, AIRCRAFT, undefined, inbound);
    expect(placeAndWind(outbound.belief.mean).windEast).toBeGreaterThan(12);
    const north = flatLeg({ ...NORTHBOUND.leg, direction: 'from', courseDeg: 0, endDmeNm: 14 });
    const { headingDeg } = guide(
      startEstimate(north, AIRCRAFT, undefined, inbound),
      north,
    ).whichWay;
    expect(headingDeg).toBeGreaterThan(335);
    expect(headingDeg).toBeLessThan(358);
  });

  it('carries place and wind to another station through the earth, not the plane', () => {
    const readings: Reading[] = [FIRST, { ...FIRST, atMs: 60_000, dmeNm: 9.6, needleDots: -1 }];
    const before = estimate(readings, IN, AIRCRAFT);
    const other = dated({ station: XUN, direction: 'to', courseDeg: 112, altitudeFt: 4500 });
    const there = startEstimate(other, AIRCRAFT, undefined, before);
    const back = startEstimate(IN, AIRCRAFT, undefined, there);
    const one = placeAndWind(before.belief.mean);
    const again = placeAndWind(back.belief.mean);
    expect(again.east).toBeCloseTo(one.east, 3);
    expect(again.north).toBeCloseTo(one.north, 3);
    expect(again.windEast).toBeCloseTo(one.windEast, 3);
    const spread = (of: typeof before): number => (of.belief.covariance[0] ?? 0) * 1e4;
    expect(spread(back)).toBeCloseTo(spread(before), 3);
  });
});
