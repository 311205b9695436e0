import { describe, expect, test } from 'vitest';
import { adviceOf } from '../../src/procedure/advise.ts';
import type { Advice } from '../../src/procedure/advice.ts';
import { addReading, startEstimate } from '../../src/track/estimate.ts';
import type { Estimate } from '../../src/track/estimate.ts';
import { abeamTurn } from '../../src/track/bearing-change-offer.ts';
import { lnRangeSd } from '../../src/track/place.ts';
import type { Reading } from '../../src/track/reading.ts';
import type { Wind } from '../../src/wind/wind.ts';
import { AIRCRAFT } from './ocean-legs.ts';
import { FLAT_STATION, flatLeg } from './tracked-flight.ts';

const RAD = Math.PI / 180;
const COURSE_DEG = 145;
const MANNER = { decimalWord: 'decimal' } as const;

interface Air {
  readonly rangeNm: number;
  readonly windToEastKt?: number;
  readonly windToNorthKt?: number;
  readonly hasDme?: boolean;
  readonly direction?: 'to' | 'from';
}

/** An aircraft over the flat earth that holds each heading from one reading to the next, without errors. */
function flight(air: Air, forecast?: Wind) {
  const { rangeNm, windToEastKt = 0, windToNorthKt = 0, hasDme = false, direction = 'to' } = air;
  const leg = flatLeg({
    station: { ...FLAT_STATION, hasDme },
    direction,
    courseDeg: COURSE_DEG,
    altitudeFt: 4500,
  });
  const startDeg = direction === 'to' ? COURSE_DEG + 180 : COURSE_DEG;
  let east = rangeNm * Math.sin(startDeg * RAD);
  let north = rangeNm * Math.cos(startDeg * RAD);
  let atS = 0;
  let known: Estimate = startEstimate(leg, AIRCRAFT, forecast);
  let advice: Advice | undefined;
  const radialDeg = (): number => ((Math.atan2(east, north) / RAD) % 360 + 360) % 360; // prettier-ignore
  return {
    /** Reads the panel while this heading is held; `isCentred`: the OBS is turned until the needle is centred. */
    read(headingDeg: number, isCentred = false, more: Partial<Reading> = {}): Advice {
      const off = half(radialDeg() - COURSE_DEG);
      const isFrom = isCentred || Math.abs(off) < 90;
      const needleDeg = isFrom ? -off : half(off - 180);
      known = addReading(known, {
        atMs: atS * 1000,
        headingDeg,
        courseSetDeg: isCentred ? radialDeg() : COURSE_DEG,
        needleDots: isCentred ? 0 : Math.max(-5, Math.min(5, needleDeg / 2)),
        flag: isFrom ? 'from' : 'to',
        ...(hasDme ? { dmeNm: Math.hypot(east, north, 4500 / 6076.1155) } : {}),
        ...more,
      });
      const identConfirmed = true;
      const heard = advice === undefined ? {} : { previous: advice };
      advice = adviceOf(known, leg, AIRCRAFT, { identConfirmed, manner: MANNER, ...heard });
      return advice;
    },
    fly(headingDeg: number, forS = 60): void {
      const nmPerS = AIRCRAFT.trueAirspeedKt / 3600;
      east += forS * (nmPerS * Math.sin(headingDeg * RAD) + windToEastKt / 3600);
      north += forS * (nmPerS * Math.cos(headingDeg * RAD) + windToNorthKt / 3600);
      atS += forS;
    },
    rangeNm: () => Math.hypot(east, north),
    known: () => known,
  };
}

function half(angleDeg: number): number {
  return angleDeg - 360 * Math.round(angleDeg / 360);
}

/** Three readings on the course; the last one's answer. */
function threeOnCourse(flown: ReturnType<typeof flight>): Advice {
  flown.read(COURSE_DEG);
  flown.fly(COURSE_DEG);
  flown.read(COURSE_DEG);
  flown.fly(COURSE_DEG);
  return flown.read(COURSE_DEG);
}

const OFFER = 'To find the range, if you want it: turn';

describe('the timed bearing-change check is offered', () => {
  test('after three readings that nothing gives the range to, with the turn that puts the station abeam', () => {
    const { say, nextReadingInS } = threeOnCourse(flight({ rangeNm: 20 }));
    expect(say).toContain(`${OFFER} right, heading two three five, hold it, and read the radial`);
    expect(nextReadingInS).toBe(60);
  });

  test('once, however long it is not taken', () => {
    const flown = flight({ rangeNm: 40 });
    expect(threeOnCourse(flown).say).toContain(OFFER);
    for (let minute = 0; minute < 10; minute += 1) {
      flown.fly(COURSE_DEG);
      expect(flown.read(COURSE_DEG).say).not.toContain(OFFER);
    }
  });

  test('again to the pilot who asks why', () => {
    const flown = flight({ rangeNm: 40 });
    threeOnCourse(flown);
    flown.fly(COURSE_DEG);
    const { why } = flown.read(COURSE_DEG);
    expect(why).toContain('Nothing shows the range: turn right, heading two three five');
  });

  test('with the turn towards the course where the aircraft is off it', () => {
    const flown = flight({ rangeNm: 20, windToEastKt: -25, windToNorthKt: -15 });
    expect(threeOnCourse(flown).say).toContain(`${OFFER} left, heading zero`);
  });

  test('not where the DME gives the range', () => {
    expect(threeOnCourse(flight({ rangeNm: 20, hasDme: true })).say).not.toContain(OFFER);
  });

  test('not where a cross-bearing has given the range', () => {
    const flown = flight({ rangeNm: 20 });
    flown.read(COURSE_DEG);
    flown.fly(COURSE_DEG, 10);
    // 15 NM to the right of the course, so the bearing from there is across it: 055.
    const station = { ...FLAT_STATION, ident: 'XUN', latitudeDeg: 0.13, longitudeDeg: -25.397 };
    flown.read(COURSE_DEG, true, { courseSetDeg: 55, station });
    flown.fly(COURSE_DEG);
    expect(threeOnCourse(flown).say).not.toContain(OFFER);
  });

  test('not while the needle is on its stop: the course comes first', () => {
    const flown = flight({ rangeNm: 20 });
    for (let minute = 0; minute < 4; minute += 1) {
      const { say } = flown.read(COURSE_DEG, false, { needleDots: 5 });
      expect(say).not.toContain(OFFER);
      flown.fly(COURSE_DEG);
    }
  });
});

describe('the check, taken by turning as was offered', () => {
  const WINDS = [
    { wind: 'no wind', windToEastKt: 0, windToNorthKt: 0 },
    { wind: 'a wind across the leg', windToEastKt: 16, windToNorthKt: 11 },
    { wind: 'a wind along the leg', windToEastKt: 11, windToNorthKt: -16 },
  ];

  test.each(WINDS)('holds the heading and asks for the radial, in $wind', (wind) => {
    const flown = flight({ rangeNm: 20, ...wind });
    threeOnCourse(flown);
    const abeam = flown.known().rangeCheck.kind === 'offered' ? abeamOf(flown.known()) : NaN;
    flown.fly(abeam);
    const first = flown.read(abeam, true);
    expect(first.whichWay).toMatchObject({ turn: 'none', headingDeg: abeam, holdS: 60 });
    expect(first.say).toContain('Station abeam. Centre the needle with FROM and read the O B S');
    expect(first.say).not.toContain('Set course');
    expect(first.nextReadingInS).toBe(60);
    flown.fly(abeam);
    expect(flown.read(abeam, true).say).toMatch(/The radial has moved|Range found/);
  });

  test.each(WINDS)('finds the range to two of its own standard deviations, in $wind', (wind) => {
    const flown = flight({ rangeNm: 20, ...wind });
    threeOnCourse(flown);
    const before = lnRangeSd(flown.known().belief);
    const abeam = abeamOf(flown.known());
    let advice = flyUntilEnded(flown, abeam);
    const { belief } = flown.known();
    const offSd = (Math.log(flown.rangeNm()) - belief.mean.lnRange) / lnRangeSd(belief);
    expect(Math.abs(offSd)).toBeLessThan(2);
    expect(lnRangeSd(belief)).toBeLessThan(before / 2);
    expect(advice.say).toMatch(/Range found: one \w+ miles, give or take \w+\./);
    expect(advice.say).toContain('Set course one four five again.');
    expect(advice.alerts).toEqual([]);
    // The turn back to the course, with the time to it.
    expect(advice.whichWay.turnDeg).toBeGreaterThan(60);
    flown.fly(advice.whichWay.headingDeg);
    advice = flown.read(advice.whichWay.headingDeg);
    expect(advice.say).not.toMatch(/Range found|To find the range/);
    expect(advice.say).toContain('to go');
  });

  test('is told by the rule of the handbook to the pilot who asks why', () => {
    const flown = flight({ rangeNm: 20 });
    threeOnCourse(flown);
    const { why } = flyUntilEnded(flown, abeamOf(flown.known()));
    expect(why).toMatch(
      /The radial moved (one )?\w+ degrees in \w+ minutes?: at niner five knots that is one \w+ miles in still air/,
    );
  });

  test('works outbound', () => {
    const flown = flight({ rangeNm: 12, direction: 'from' });
    threeOnCourse(flown);
    expect(flyUntilEnded(flown, abeamOf(flown.known())).say).toMatch(/Range found: one \w+ miles/);
  });

  test('comes to its end after eight minutes where the station is too far to move', () => {
    const flown = flight({ rangeNm: 150 });
    threeOnCourse(flown);
    const { say } = flyUntilEnded(flown, abeamOf(flown.known()));
    expect(say).toMatch(
      /The radial hardly moves: the station is far\.|Range found: \w+ \w+ (\w+ )?miles/,
    );
    expect(flown.known().rangeCheck).toMatchObject({ kind: 'ended' });
  });

  test('is given up by turning back, and not offered again', () => {
    const flown = flight({ rangeNm: 40 });
    threeOnCourse(flown);
    const abeam = abeamOf(flown.known());
    flown.fly(abeam);
    flown.read(abeam, true);
    flown.fly(COURSE_DEG - 20);
    const { say, whichWay } = flown.read(COURSE_DEG - 20);
    expect(say).not.toMatch(/radial|To find/);
    expect(whichWay.headingDeg).not.toBe(abeam);
    expect(flown.known().rangeCheck.kind).toBe('done');
  });

  test('is not begun by a heading that was told to get back to the course', () => {
    const flown = flight({ rangeNm: 40, windToEastKt: -25, windToNorthKt: -15 });
    let { whichWay } = threeOnCourse(flown);
    for (let minute = 0; minute < 6; minute += 1) {
      flown.fly(whichWay.headingDeg);
      ({ whichWay } = flown.read(whichWay.headingDeg));
      expect(flown.known().rangeCheck.kind).toBe('offered');
    }
  });
});

/** The heading offered. */
function abeamOf(known: Estimate): number {
  return abeamTurn(known)?.headingDeg ?? NaN;
}

/** Turns abeam and reads the radial each minute until the check has come to its end; its last answer. */
function flyUntilEnded(flown: ReturnType<typeof flight>, abeamDeg: number): Advice {
  for (let minute = 0; minute < 12; minute += 1) {
    flown.fly(abeamDeg);
    const advice = flown.read(abeamDeg, true);
    if (flown.known().rangeCheck.kind !== 'flying') return advice;
  }
  throw new Error('the check does not end');
}
