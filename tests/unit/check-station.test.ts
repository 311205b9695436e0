import { describe, expect, test } from 'vitest';
import { checkStation } from '../../src/station/check-station.ts';
import { frequencyProblems } from '../../src/station/frequency.ts';
import type { Station } from '../../src/station/station.ts';

const station: Station = {
  ident: 'QEV',
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
  hasDme: true,
  frequencyMhz: 113.35,
};

function fieldsRefused(change: Partial<Station>): string[] {
  const result = checkStation({ ...station, ...change });
  return result.ok ? [] : result.problem.map(({ field }) => field);
}

describe('a station', () => {
  test.each(['Q', 'QE', 'QEV', 'QEVA', 'Q1'])('may have the ident %s', (ident) => {
    expect(fieldsRefused({ ident })).toEqual([]);
  });

  test.each(['', 'QEVAN', 'Q V', 'É', 'Q-V'])('may not have the ident "%s"', (ident) => {
    expect(fieldsRefused({ ident })).toEqual(['leg.station.ident']);
  });

  test('typed in small letters comes back in capitals', () => {
    expect(checkStation({ ...station, ident: 'qev' })).toMatchObject({ value: { ident: 'QEV' } });
  });

  test.each([
    [{ latitudeDeg: 90.1 }, 'leg.station.latitudeDeg'],
    [{ longitudeDeg: -180.1 }, 'leg.station.longitudeDeg'],
    [{ elevationFt: 20_001 }, 'leg.station.elevationFt'],
    [{ declinationDegEast: 181 }, 'leg.station.declinationDegEast'],
    [{ frequencyMhz: 118 }, 'leg.station.frequencyMhz'],
    [{ dme: { latitudeDeg: -91, longitudeDeg: 0, elevationFt: 0 } }, 'leg.station.dme.latitudeDeg'],
  ])('with %o is refused by the name of the field', (change, field) => {
    expect(fieldsRefused(change)).toEqual([field]);
  });
});

describe('a frequency (Instrument Flying Handbook ch. 9: 108.0 to 117.95, even tenths below 112)', () => {
  test.each([108, 108.05, 108.2, 108.25, 111.8, 111.85, 112, 112.1, 113.35, 117.95])(
    '%d MHz is a VOR’s',
    (mhz) => {
      expect(frequencyProblems(mhz, 'f')).toEqual([]);
    },
  );

  test.each([108.1, 108.15, 109.5, 111.95])('%d MHz is a localizer’s', (mhz) => {
    expect(frequencyProblems(mhz, 'f')[0]?.expected).toContain('localizers');
  });

  test.each([107.95, 118, 113.33, 113.3501, -113.35, NaN, Infinity])(
    '%d MHz is nobody’s',
    (mhz) => {
      expect(frequencyProblems(mhz, 'f')[0]?.expected).toContain('108.00 to 117.95');
    },
  );

  test('every step from 112.00 up is accepted, though binary fractions miss most of them', () => {
    for (let step = 0; step <= 119; step++) {
      expect(frequencyProblems(112 + step * 0.05, 'f'), String(step)).toEqual([]);
    }
  });
});
