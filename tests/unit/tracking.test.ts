import { describe, expect, it } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { estimate, startEstimate } from '../../src/track/estimate.ts';
import { foresee } from '../../src/track/foresee.ts';
import { guide } from '../../src/track/guide.ts';
import type { Guidance } from '../../src/track/guidance.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND, OUTBOUND, QEV, XUN, dated } from './ocean-legs.ts';
import {
  FLAT_STATION,
  flatLeg,
  panelAfter,
  placeAndWind,
  straightFlight,
} from './tracked-flight.ts';
import type { FlatFlight } from './tracked-flight.ts';

const IN = dated(INBOUND);
const OUT = dated(OUTBOUND);

const FIRST: Reading = {
  atMs: 0,
  headingDeg: 112,
  courseSetDeg: 112,
  needleDots: -1.5,
  flag: 'to',
  dmeNm: 11.2,
};

function advice(readings: readonly Reading[], leg = IN): Guidance {
  return guide(estimate(readings, leg, AIRCRAFT), leg);
}

/** North to a station over the flat earth, 20 NM out, in a wind of 20 kt towards the east. */
const NORTHBOUND: FlatFlight = {
  leg: { station: FLAT_STATION, direction: 'to', courseDeg: 0, altitudeFt: 4500 },
  rangeNm: 20,
  bearingDeg: 180,
  windToEastKt: 20,
  windToNorthKt: 0,
};

const MINUTES = [0, 60, 120, 180, 240, 300];

describe('one reading', () => {
  it('gives the distance off: three degrees at 11.2 NM are six tenths of a mile', () => {
    // One in sixty: 3 x 11.2 / 60 = 0.56; the tangent makes it 0.587.
    const { seen, howFar } = advice([FIRST]);
    expect(seen.crossTrackNm).toBeCloseTo(0.585, 2);
    expect(howFar.toGoNm).toBeCloseTo(Math.sqrt(11.2 ** 2 - (4090 / 6076.1) ** 2), 2);
  });

  it('turns towards the needle, by no more than an intercept', () => {
    const { whichWay } = advice([FIRST]);
    expect(whichWay.turn).toBe('left');
    expect(whichWay.turnDeg).toBeLessThanOrEqual(48);
    expect(Number.isInteger(whichWay.headingDeg)).toBe(true);
  });

  it('shows no wind, drift or time that nobody can know yet', () => {
    const { seen, howFar } = advice([FIRST]);
    expect(seen.wind).toBeNull();
    expect(seen.driftDeg).toBeNull();
    expect(howFar.toGoS).toBeNull();
    expect(howFar.groundSpeedKt).toBeNull();
  });

  it('with a forecast gives time and groundspeed at once', () => {
    const known = estimate([FIRST], IN, AIRCRAFT, { fromDegTrue: 292, speedKt: 15 });
    const { howFar } = guide(known, IN);
    expect(howFar.groundSpeedKt).toBeGreaterThan(100);
    expect(howFar.toGoS).toBeGreaterThan(0);
    expect(howFar.sdS).toBeGreaterThan(0);
  });

  it('without DME tells no distance', () => {
    const { dmeNm: _, ...withoutDme } = FIRST;
    expect(advice([withoutDme]).howFar.toGoNm).toBeNull();
    expect(advice([withoutDme]).seen.crossTrackNm).toBeNull();
  });

  it('with the needle on its stop intercepts on its side and asks for the radial', () => {
    const guidance = advice([{ ...FIRST, needleDots: 5 }]);
    expect(guidance.whichWay.turn).toBe('right');
    expect(guidance.phase).toBe('intercept');
    expect(guidance.nextQuestion).toBe('centre-needle-from');
  });

  it('with the needle centred with FROM tells the same place as with the course set', () => {
    const centred: Reading = { ...FIRST, courseSetDeg: 289, needleDots: 0, flag: 'from' };
    const { crossTrackNm } = advice([centred]).seen;
    expect(crossTrackNm).toBeCloseTo(advice([FIRST]).seen.crossTrackNm ?? NaN, 6);
  });
});

describe('no reading yet', () => {
  it('gives the heading along the course in the forecast wind and asks for the radial', () => {
    const calm = startEstimate(IN, AIRCRAFT, { fromDegTrue: 0, speedKt: 0 });
    const { whichWay, nextQuestion, howFar } = guide(calm, IN);
    const still = 112 + QEV.declinationDegEast - IN.variationDegEast;
    expect(whichWay.headingDeg).toBe(Math.round(still));
    expect(nextQuestion).toBe('centre-needle-from');
    expect(howFar.toGoNm).toBeNull();
  });
});

describe('readings on a straight flight', () => {
  it('find the wind across it', () => {
    const known = estimate(
      straightFlight(NORTHBOUND, 348, MINUTES),
      flatLeg(NORTHBOUND.leg),
      AIRCRAFT,
    );
    const { windEast, windNorth } = placeAndWind(known.belief.mean);
    expect(Math.abs(windEast - 20)).toBeLessThan(5);
    expect(Math.abs(windNorth)).toBeLessThan(5);
    const { seen } = guide(known, flatLeg(NORTHBOUND.leg));
    expect(seen.wind?.speedKt).toBeGreaterThan(12);
    expect(Math.abs((seen.wind?.fromDegMag ?? 0) - 270)).toBeLessThan(20);
    expect(seen.driftDeg).toBeGreaterThan(6);
  });

  it('through north give the same as on any other heading', () => {
    const known = estimate(
      straightFlight({ ...NORTHBOUND, windToEastKt: 0 }, 0, MINUTES),
      flatLeg(NORTHBOUND.leg),
      AIRCRAFT,
    );
    const { headingDeg } = guide(known, flatLeg(NORTHBOUND.leg)).whichWay;
    expect(Math.min(headingDeg, 360 - headingDeg)).toBeLessThanOrEqual(5);
  });

  it('without DME and forecast never tell a wind or a time', () => {
    const leg = { ...NORTHBOUND.leg, station: { ...FLAT_STATION, hasDme: false } };
    for (let count = 1; count <= MINUTES.length; count += 1) {
      const readings = straightFlight({ ...NORTHBOUND, leg }, 348, MINUTES.slice(0, count));
      const { seen, howFar } = guide(estimate(readings, flatLeg(leg), AIRCRAFT), flatLeg(leg));
      expect(seen.wind).toBeNull();
      expect(howFar.toGoS).toBeNull();
    }
  });

  it('a heading left out means that the heading told is flown', () => {
    const told = guide(estimate([FIRST], IN, AIRCRAFT), IN).whichWay;
    const { headingDeg: _, ...silent } = { ...FIRST, atMs: 60_000, needleDots: -0.5, dmeNm: 9.7 };
    const spoken = { ...silent, headingDeg: told.thenHeadingDeg };
    const one = estimate([FIRST, silent], IN, AIRCRAFT).belief.mean;
    const other = estimate([FIRST, spoken], IN, AIRCRAFT).belief.mean;
    expect(one).toEqual(other);
  });

  it('after a gap of an hour start from the new place and keep what the wind may still be', () => {
    const before = straightFlight(NORTHBOUND, 348, MINUTES);
    const late: Reading = { ...FIRST, atMs: 3_900_000, courseSetDeg: 0, needleDots: 1, dmeNm: 40 };
    const known = estimate([...before, late], flatLeg(NORTHBOUND.leg), AIRCRAFT);
    expect(Math.exp(known.belief.mean.lnRange)).toBeCloseTo(40, 0);
    expect(known.doubt).toBeNull();
    expect(known.isLost).toBe(false);
  });

  it('two readings of one moment add up', () => {
    const { dmeNm, needleDots, ...rest } = FIRST;
    const needle = { ...rest, needleDots: needleDots ?? 0 };
    const distance = { ...rest, dmeNm: dmeNm ?? 0 };
    const both = estimate([needle, distance], IN, AIRCRAFT);
    const { crossTrackNm } = guide(both, IN).seen;
    expect(crossTrackNm).toBeCloseTo(0.585, 1);
  });

  it('an OBS turned three degrees for one reading changes neither place nor doubt', () => {
    const leg = flatLeg(NORTHBOUND.leg);
    const before = straightFlight(NORTHBOUND, 348, MINUTES);
    const plain = estimate([...before, panelAfter(NORTHBOUND, 348, 360)], leg, AIRCRAFT);
    const test = estimate([...before, panelAfter(NORTHBOUND, 348, 360, 357)], leg, AIRCRAFT);
    const one = placeAndWind(plain.belief.mean);
    const other = placeAndWind(test.belief.mean);
    expect(other.east).toBeCloseTo(one.east, 6);
    expect(alertsOf(test)).toEqual([]);
  });
});

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
    const { needleDots: _, ...off } = { ...panelAfter(NORTHBOUND, 348, 360), flag: 'off' as const };
    expect(kindsAfter([off])).toEqual(['flag-off']);
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
    const { needleDots: _, ...off } = { ...panelAfter(flight, 0, 300), flag: 'off' as const };
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

describe('an outbound leg', () => {
  it('counts down to the distance at which it ends', () => {
    const reading: Reading = {
      atMs: 0,
      headingDeg: 140,
      courseSetDeg: 140,
      needleDots: 0,
      flag: 'from',
      dmeNm: 12.9,
    };
    const guidance = advice([reading], OUT);
    expect(guidance.phase).toBe('arriving');
    expect(guidance.howFar.toGoNm).toBeCloseTo(1.1, 1);
  });
});

describe('a cross-bearing from another station', () => {
  it('narrows the distance that no DME gives', () => {
    const leg = dated({ ...INBOUND, station: { ...QEV, hasDme: false } });
    const { dmeNm: _, ...first } = FIRST;
    // A station 40 NM north of where the aircraft is.
    const abeam = placeAt(placeAt(QEV, trueDeg(282), 11), trueDeg(0), 40);
    const cross: Reading = {
      atMs: 30_000,
      courseSetDeg: 180 - XUN.declinationDegEast,
      needleDots: 0,
      flag: 'from',
      station: { ...XUN, ...abeam },
    };
    const before = estimate([first], leg, AIRCRAFT);
    const after = estimate([first, cross], leg, AIRCRAFT);
    expect(after.belief.covariance[0]).toBeLessThan(0.1 * (before.belief.covariance[0] ?? 0));
    expect(after.flag).toBe('to');
  });
});

describe('what is foreseen', () => {
  it('is the panel after the heading told has been flown', () => {
    const known = estimate([FIRST], IN, AIRCRAFT);
    const seen = foresee(known, IN, 60_000);
    expect(seen.dmeNm).toBeGreaterThan(9.3);
    expect(seen.dmeNm).toBeLessThan(10.2);
    expect(Math.abs(seen.needleDots ?? 9)).toBeLessThan(1);
    expect(seen.flag).toBe('to');
    expect(seen.headingDeg).toBe(guide(known, IN).whichWay.thenHeadingDeg);
  });

  it('has no needle in the cone', () => {
    const close: Reading = { ...FIRST, needleDots: 0, dmeNm: 1.5 };
    const seen = foresee(estimate([close], IN, AIRCRAFT), IN, 40_000);
    expect(seen.needleDots).toBeNull();
    expect(seen.flag).toBe('off');
  });
});
