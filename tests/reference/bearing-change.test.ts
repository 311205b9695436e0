import { describe, expect, test } from 'vitest';
import { bearingChangeS } from '../../src/leg/timed-bearing.ts';
import { rangeByBearingChange } from '../../src/track/bearing-change.ts';

const NO_SPEED_NEEDED = 1;

// The rule is exact arithmetic; the FAA's answers are given to a tenth.
const WITHIN = 1;

describe("time to a station by the change of its bearing (FAA, Pilot's Handbook of Aeronautical Knowledge, pp. 16-26 and 16-27, figures 16-33 and 16-34)", () => {
  test.each([
    { flownMin: 2, changeDeg: 10, minutes: 12 },
    { flownMin: 75 / 60, changeDeg: 10, minutes: 7.5 },
  ])('$changeDeg degrees in $flownMin minutes are $minutes minutes', (row) => {
    const found = rangeByBearingChange(row.flownMin, row.changeDeg, NO_SPEED_NEEDED);
    expect(found?.minutesToStation).toBeCloseTo(row.minutes, WITHIN);
  });

  test('75 seconds for 10 degrees at 120 knots are 15 miles', () => {
    expect(rangeByBearingChange(75 / 60, 10, 120)?.distanceNm).toBeCloseTo(15, WITHIN);
  });
});

describe('time and distance items of FAA knowledge tests (as reproduced in public question banks)', () => {
  test.each([
    { what: 'relative bearing 095 to 100', flownMin: 1.5, changeDeg: 5, minutes: 18 },
    { what: 'relative bearing 270 to 265', flownMin: 2.5, changeDeg: -5, minutes: 30 },
    { what: 'relative bearing 085 to 090', flownMin: 2, changeDeg: 5, minutes: 24 },
    { what: '5 degrees in 6 minutes', flownMin: 6, changeDeg: 5, minutes: 72 },
    { what: '15 degrees in 6 minutes', flownMin: 6, changeDeg: 15, minutes: 24 },
    { what: '15 degrees in 7.5 minutes', flownMin: 7.5, changeDeg: 15, minutes: 30 },
    { what: 'radial 360 at 12:37, 350 at 12:44', flownMin: 7, changeDeg: -10, minutes: 42 },
    { what: '5 degrees in 5 minutes', flownMin: 5, changeDeg: 5, minutes: 60 },
  ])('$what: $minutes minutes', ({ flownMin, changeDeg, minutes }) => {
    const found = rangeByBearingChange(flownMin, changeDeg, NO_SPEED_NEEDED);
    expect(found?.minutesToStation).toBeCloseTo(minutes, WITHIN);
  });

  test.each([
    { flownMin: 1.5, changeDeg: 5, speedKt: 115, miles: 34.5 },
    { flownMin: 7.5, changeDeg: 15, speedKt: 85, miles: 42.5 },
    { flownMin: 2, changeDeg: 10, speedKt: 160, miles: 32 },
    { flownMin: 7, changeDeg: 10, speedKt: 120, miles: 84 },
    { flownMin: 5, changeDeg: 5, speedKt: 115, miles: 115 },
  ])('$changeDeg degrees in $flownMin minutes at $speedKt knots are $miles miles', (row) => {
    const found = rangeByBearingChange(row.flownMin, row.changeDeg, row.speedKt);
    expect(found?.distanceNm).toBeCloseTo(row.miles, WITHIN);
  });
});

describe('the rule against plane geometry (station abeam in still air: distance = flown / tan of the change)', () => {
  test.each([1, 5, 10])('reads 4.7 to 5.8 percent long at %d degrees', (changeDeg) => {
    const exactNm = (100 / 60) * 2 * (1 / Math.tan((changeDeg * Math.PI) / 180));
    const ratio = (rangeByBearingChange(2, changeDeg, 100)?.distanceNm ?? NaN) / exactNm;
    expect(ratio).toBeGreaterThan(1.046);
    expect(ratio).toBeLessThan(1.059);
  });

  test.each([
    { flownMin: 0, changeDeg: 10, speedKt: 95 },
    { flownMin: 2, changeDeg: 0, speedKt: 95 },
    { flownMin: 2, changeDeg: 10, speedKt: 0 },
    { flownMin: NaN, changeDeg: 10, speedKt: 95 },
  ])('gives nothing for $flownMin minutes, $changeDeg degrees, $speedKt knots', (row) => {
    expect(rangeByBearingChange(row.flownMin, row.changeDeg, row.speedKt)).toBeNull();
  });
});

describe('how long a change of bearing takes, by the same handbook figures and test items', () => {
  test.each([
    { source: 'handbook, 16-26', rangeNm: 15, speedKt: 120, changeDeg: 10, seconds: 75 },
    { source: 'FAA item', rangeNm: 32, speedKt: 160, changeDeg: 10, seconds: 120 },
    { source: 'FAA item', rangeNm: 34.5, speedKt: 115, changeDeg: 5, seconds: 90 },
    { source: 'FAA item', rangeNm: 42.5, speedKt: 85, changeDeg: 15, seconds: 450 },
    { source: 'FAA item', rangeNm: 84, speedKt: 120, changeDeg: 10, seconds: 420 },
  ])('$source: $changeDeg degrees at $rangeNm NM and $speedKt kt take $seconds s', (row) => {
    expect(bearingChangeS(row.rangeNm, row.speedKt, row.changeDeg)).toBeCloseTo(row.seconds, 6);
  });

  test.each([
    [0, 95, 10],
    [10, 0, 10],
    [10, 95, 0],
    [NaN, 95, 10],
  ])('gives nothing for %d NM, %d kt, %d degrees', (rangeNm, speedKt, changeDeg) => {
    expect(bearingChangeS(rangeNm, speedKt, changeDeg)).toBeNull();
  });
});
