import { describe, expect, test } from 'vitest';
import type { Result } from '../../src/base/result.ts';
import { checkAircraft } from '../../src/leg/check-aircraft.ts';
import { checkLeg } from '../../src/leg/check-leg.ts';
import type { Aircraft, Leg } from '../../src/leg/leg.ts';

const open: Leg = {
  station: {
    ident: 'QEV',
    latitudeDeg: 46.5,
    longitudeDeg: -21.25,
    elevationFt: 410,
    declinationDegEast: -7,
    hasDme: true,
    frequencyMhz: 113.35,
  },
  direction: 'to',
  courseDeg: 112,
  altitudeFt: 4_500,
};
const leg: Leg = { ...open, endDmeNm: 0 };

const aircraft: Aircraft = { trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 };

function fieldsRefused(result: Result<unknown>): string[] {
  return result.ok ? [] : result.problem.map(({ field }) => field);
}

describe('a leg', () => {
  test('that can be flown is accepted as it is', () => {
    expect(checkLeg(leg)).toEqual({ ok: true, value: leg });
  });

  test('on course 360 goes north', () => {
    expect(checkLeg({ ...leg, courseDeg: 360 })).toMatchObject({ value: { courseDeg: 0 } });
  });

  test.each([
    [{ courseDeg: 361 }, 'leg.courseDeg'],
    [{ courseDeg: -1 }, 'leg.courseDeg'],
    [{ courseDeg: NaN }, 'leg.courseDeg'],
    [{ altitudeFt: 45_001 }, 'leg.altitudeFt'],
    [{ altitudeFt: -1_001 }, 'leg.altitudeFt'],
    [{ altitudeFt: 410 }, 'leg.altitudeFt'],
    [{ endDmeNm: 250.1 }, 'leg.endDmeNm'],
    [{ endDmeNm: -0.1 }, 'leg.endDmeNm'],
  ])('with %o is refused by the name of the field', (change, field) => {
    expect(fieldsRefused(checkLeg({ ...leg, ...change }))).toEqual([field]);
  });

  test('says what was expected in a pilot’s words and repeats what was given', () => {
    expect(checkLeg({ ...leg, courseDeg: 400 })).toEqual({
      ok: false,
      problem: [{ field: 'leg.courseDeg', expected: 'a course in degrees, 0 to 360', got: '400' }],
    });
    expect(checkLeg({ ...leg, altitudeFt: 60_000 })).toMatchObject({
      problem: [{ expected: 'feet above mean sea level, -1,000 to 45,000' }],
    });
  });

  test('names every field that is wrong, in its station too, at once', () => {
    const station = { ...leg.station, ident: '', latitudeDeg: 91 };
    expect(fieldsRefused(checkLeg({ ...leg, station, courseDeg: 400 }, 'legs.1'))).toEqual([
      'legs.1.station.ident',
      'legs.1.station.latitudeDeg',
      'legs.1.courseDeg',
    ]);
  });

  test('that ends where the DME cannot show so little is refused with the reason', () => {
    // 4,090 ft are 0.67 NM.
    const result = checkLeg({ ...leg, direction: 'from', endDmeNm: 0.5 });
    expect(result).toMatchObject({ ok: false, problem: [{ field: 'leg.endDmeNm', got: '0.5' }] });
    expect(result.ok ? '' : result.problem[0]?.expected).toContain('at least 0.7 NM');
    expect(fieldsRefused(checkLeg({ ...leg, direction: 'from', endDmeNm: 0 }))).toHaveLength(1);
    expect(checkLeg({ ...leg, direction: 'from', endDmeNm: 0.7 }).ok).toBe(true);
  });

  test('that ends at a DME distance of a station without a DME is refused', () => {
    const station = { ...leg.station, hasDme: false };
    const away = { ...open, station, direction: 'from' } as const;
    expect(fieldsRefused(checkLeg({ ...away, endDmeNm: 14 }))).toEqual(['leg.endDmeNm']);
    expect(checkLeg(away).ok).toBe(true);
    expect(checkLeg({ ...leg, station }).ok).toBe(true);
  });

  test('with the DME on a hill is measured from that antenna', () => {
    const dme = { latitudeDeg: 46.5, longitudeDeg: -21.25, elevationFt: 2_500 };
    const hill = {
      ...leg,
      station: { ...leg.station, dme },
      direction: 'from',
      endDmeNm: 0.5,
    } as const;
    expect(checkLeg(hill).ok).toBe(true);
  });

  test('to the station may end over it, or leave the end out', () => {
    expect(checkLeg(open).ok).toBe(true);
    expect(checkLeg({ ...open, direction: 'from' }).ok).toBe(true);
  });
});

describe('an aircraft', () => {
  test('that a light aircraft may be is accepted as it is', () => {
    expect(checkAircraft(aircraft)).toEqual({ ok: true, value: aircraft });
  });

  test.each([
    [{ trueAirspeedKt: -95 }, 'aircraft.trueAirspeedKt'],
    [{ trueAirspeedKt: 29.9 }, 'aircraft.trueAirspeedKt'],
    [{ trueAirspeedKt: 401 }, 'aircraft.trueAirspeedKt'],
    [{ trueAirspeedKt: Infinity }, 'aircraft.trueAirspeedKt'],
    [{ degreesPerDot: 0.4 }, 'aircraft.degreesPerDot'],
    [{ degreesPerDot: 5.1 }, 'aircraft.degreesPerDot'],
    [{ dotsFullScale: 0 }, 'aircraft.dotsFullScale'],
    [{ dotsFullScale: 11 }, 'aircraft.dotsFullScale'],
  ])('with %o is refused by the name of the field', (change, field) => {
    expect(fieldsRefused(checkAircraft({ ...aircraft, ...change }))).toEqual([field]);
  });
});
