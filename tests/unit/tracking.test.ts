import { describe, expect, it } from 'vitest';
import { cosDeg, sinDeg } from '../../src/base/angle.ts';
import { trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { estimate, startEstimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import { foresee } from '../../src/track/foresee.ts';
import { guide } from '../../src/track/guide.ts';
import type { Guidance } from '../../src/track/guidance.ts';
import { alertsOf } from '../../src/track/monitor.ts';
import { placeOf } from '../../src/track/place.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, INBOUND, OUTBOUND, QEV, XUN, dated } from './ocean-legs.ts';
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

const IN = dated(INBOUND);
const OUT = dated(OUTBOUND);

function advice(readings: readonly Reading[], leg = IN): Guidance {
  return guide(estimate(readings, leg, AIRCRAFT), leg);
}

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
    const withoutDme = without(FIRST, 'dmeNm');
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
    const later = { ...FIRST, atMs: 60_000, needleDots: -0.5, dmeNm: 9.7 };
    const silent = without(later, 'headingDeg');
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
    const first = without(FIRST, 'dmeNm');
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

describe('the DME of another station', () => {
  const leg = dated({ ...INBOUND, station: { ...QEV, hasDme: false } });
  const first = without(FIRST, 'dmeNm');
  // FIRST is three degrees right of the course: on the radial 289 of QEV, 282 true. XUN then lies 40 NM north of 11 NM.
  const place = placeAt(QEV, trueDeg(282), 11);
  const other = { ...XUN, ...placeAt(place, trueDeg(0), 40), hasDme: true, elevationFt: 4500 };
  const reading = (dmeNm: number): Reading => ({
    atMs: 0,
    courseSetDeg: 180 - XUN.declinationDegEast,
    needleDots: 0,
    flag: 'from',
    dmeNm,
    station: other,
  });
  const offNm = (known: Estimate): number => {
    const { eastNm, northNm } = placeOf(known.belief.mean);
    return Math.hypot(eastNm - 11 * sinDeg(282), northNm - 11 * cosDeg(282));
  };

  it('is taken in with its radial: both together put the aircraft where they cross', () => {
    const bearing = estimate([first, without(reading(40), 'dmeNm')], leg, AIRCRAFT);
    const both = estimate([first, reading(40)], leg, AIRCRAFT);
    expect(alertsOf(both)).toEqual([]);
    expect(offNm(both)).toBeLessThan(offNm(bearing) + 0.1);
    expect(offNm(both)).toBeLessThan(0.5);
    const { northNm } = placeOf(both.belief.mean);
    expect(northNm).toBeCloseTo(11 * cosDeg(282), 0);
  });

  it('that cannot be is asked for again, and not used', () => {
    const known = estimate([first, reading(90)], leg, AIRCRAFT);
    const bearing = estimate([first, without(reading(90), 'dmeNm')], leg, AIRCRAFT);
    expect(alertsOf(known).map(({ ask }) => ask)).toEqual([
      'The reading of the other station does not fit: please read it again.',
    ]);
    expect(known.belief).toEqual(bearing.belief);
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
