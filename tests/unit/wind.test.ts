import { describe, expect, test } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { timeToGoS } from '../../src/leg/time-to-go.ts';
import { oneInSixtyDeg } from '../../src/leg/off-course.ts';
import { trueAirspeedKt } from '../../src/wind/airspeed.ts';
import { checkWind } from '../../src/wind/check-wind.ts';
import { headingForCourse, trackForHeading } from '../../src/wind/triangle.ts';

describe('a wind too strong for the airspeed', () => {
  const course = { courseDegTrue: trueDeg(90), trueAirspeedKt: 60 };

  test.each([
    ['across the course', { fromDegTrue: 0, speedKt: 61 }],
    ['from ahead', { fromDegTrue: 90, speedKt: 60 }],
    ['from half ahead', { fromDegTrue: 45, speedKt: 70 }],
  ])('%s is refused, and says so', (_, wind) => {
    const result = headingForCourse({ ...course, wind });
    expect(result).toMatchObject({ ok: false, problem: [{ field: 'wind.speedKt' }] });
    expect(result.ok ? '' : result.problem[0]?.expected).toContain('60 kt');
  });

  test('from behind it is none', () => {
    const result = headingForCourse({ ...course, wind: { fromDegTrue: 270, speedKt: 80 } });
    expect(result).toMatchObject({ ok: true, value: { groundSpeedKt: 140 } });
  });

  test('an aircraft that the wind holds still has no track: its heading stands for it', () => {
    const wind = { fromDegTrue: 0, speedKt: 60 };
    expect(trackForHeading({ headingDegTrue: trueDeg(0), trueAirspeedKt: 60, wind })).toEqual({
      trackDegTrue: 0,
      driftDeg: 0,
      groundSpeedKt: 0,
    });
  });
});

describe('a wind in the input', () => {
  test('from 360 comes from north', () => {
    expect(checkWind({ fromDegTrue: 360, speedKt: 15 })).toEqual({
      ok: true,
      value: { fromDegTrue: 0, speedKt: 15 },
    });
  });

  test.each([
    [{ fromDegTrue: 361, speedKt: 15 }, 'forecastWind.fromDegTrue'],
    [{ fromDegTrue: 330, speedKt: -1 }, 'forecastWind.speedKt'],
    [{ fromDegTrue: 330, speedKt: NaN }, 'forecastWind.speedKt'],
  ])('%o is refused by the name of the field', (wind, field) => {
    expect(checkWind(wind)).toMatchObject({ ok: false, problem: [{ field }] });
  });
});

describe('airspeeds that make no sense', () => {
  test.each([
    [{ calibratedAirspeedKt: -1, pressureAltitudeFt: 0 }, 'calibratedAirspeedKt'],
    [{ calibratedAirspeedKt: 120, pressureAltitudeFt: 90_000 }, 'pressureAltitudeFt'],
    [{ calibratedAirspeedKt: 120, pressureAltitudeFt: 0, temperatureC: -300 }, 'temperatureC'],
    [{ calibratedAirspeedKt: 550, pressureAltitudeFt: 40_000 }, 'calibratedAirspeedKt'],
  ])('%o is refused by the name of the field', (read, field) => {
    expect(trueAirspeedKt(read)).toMatchObject({ ok: false, problem: [{ field }] });
  });
});

describe('limits of the rules', () => {
  test('an aircraft that stands still over the ground never arrives', () => {
    expect(timeToGoS(10, 0)).toBeNull();
    expect(timeToGoS(10, -3)).toBeNull();
  });

  test('over no distance there is no angle to close', () => {
    expect(oneInSixtyDeg(1, 0)).toBe(0);
  });
});
