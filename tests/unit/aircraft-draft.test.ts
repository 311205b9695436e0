import { describe, expect, it } from 'vitest';
import { draftOf, readAircraft, workedOutKt } from '../../client/parts/aircraft-draft.ts';
import { emptyPlan, readPlan } from '../../client/parts/plan-draft.ts';

const typed = { ...draftOf(undefined), name: 'Two seats', speed: '95' };
const workedOut = {
  ...typed,
  by: 'calibrated',
  calibrated: '120',
  pressureAltitude: '5,500',
  temperature: '4',
} as const;

function fieldsRefused(draft: Parameters<typeof readAircraft>[0]): string[] {
  const read = readAircraft(draft);
  return read.ok ? [] : read.problem.map(({ field }) => field);
}

describe('an aircraft with its true airspeed typed in', () => {
  it('is read with the scale that is filled in', () => {
    const value = { name: 'Two seats', trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 };
    expect(readAircraft(typed)).toEqual({ ok: true, value });
  });

  it('is refused without one', () => {
    expect(fieldsRefused({ ...typed, speed: '' })).toEqual(['aircraft.trueAirspeedKt']);
  });
});

describe('a true airspeed worked out (EASA question bank, item 5.48: 120 kt, 5,500 ft, 4 C: 130 kt)', () => {
  it('is that of the question bank to a knot', () => {
    const found = workedOutKt(workedOut);
    expect(Math.abs((found.ok ? found.value : NaN) - 130)).toBeLessThanOrEqual(1);
  });

  it('is kept with what it was worked out from, and comes back to be changed', () => {
    const read = readAircraft(workedOut);
    expect(read).toMatchObject({
      ok: true,
      value: {
        airspeedFrom: { calibratedAirspeedKt: 120, pressureAltitudeFt: 5500, temperatureC: 4 },
      },
    });
    const again = draftOf(read.ok ? read.value : undefined);
    expect(again).toMatchObject({ by: 'calibrated', calibrated: '120', temperature: '4' });
    expect(readAircraft(again)).toEqual(read);
  });

  it('takes the standard temperature where none is typed', () => {
    expect(workedOutKt({ ...workedOut, temperature: '' }).ok).toBe(true);
  });

  it('is refused by the names of what it comes from', () => {
    expect(fieldsRefused({ ...workedOut, calibrated: '', pressureAltitude: 'high' })).toEqual([
      'aircraft.calibratedAirspeedKt',
      'aircraft.pressureAltitudeFt',
    ]);
    // 20 kt is no airspeed that an aeroplane flies at.
    expect(fieldsRefused({ ...workedOut, calibrated: '20' })).toEqual([
      'aircraft.calibratedAirspeedKt',
    ]);
  });

  it('goes into a plan as the airspeed alone', () => {
    const read = readAircraft(workedOut);
    if (!read.ok) throw new Error('refused');
    const leg = {
      ident: 'QEV',
      frequency: '113.35',
      latitude: '46.5 N',
      longitude: '21.25 W',
      elevation: '410',
      declination: '7 W',
      course: '112',
      altitude: '4500',
    };
    const empty = emptyPlan('2026-11-25');
    const legs = empty.legs.map((each) => ({ ...each, ...leg }));
    const plan = readPlan({ ...empty, legs }, read.value);
    expect(plan.ok && Object.keys(plan.value.aircraft).sort()).toEqual([
      'degreesPerDot',
      'dotsFullScale',
      'trueAirspeedKt',
    ]);
  });
});
