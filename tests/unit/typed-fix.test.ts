import { describe, expect, it } from 'vitest';
import { geodesicTo } from '../../src/earth/geodesic.ts';
import { readPlace } from '../../src/leg/route/typed-place.ts';
import { placeOnRadial, readFix } from '../../src/leg/route/typed-fix.ts';
import { stationDeg } from '../../src/base/bearing.ts';

describe('a place as a pilot types it', () => {
  it.each([
    ['46.5, -21.25', 46.5, -21.25],
    ['-46.5 21.25', -46.5, 21.25],
    ['46.5 N 21.25 W', 46.5, -21.25],
    ['46,5N 21,25W', 46.5, -21.25],
    ['46 30 N 21 15 W', 46.5, -21.25],
    ['N46 30.6 W021 15.6', 46.51, -21.26],
    ['46°30′36″N 021°15′36″W', 46.51, -21.26],
    ['46 30 36 N, 21 15 36 W', 46.51, -21.26],
    ['4630N02115W', 46.5, -21.25],
    ['463036N 0211536W', 46.51, -21.26],
    ['33 57 S 18 36 E', -33.95, 18.6],
    ['0, 0', 0, 0],
  ])('%s', (text, latitudeDeg, longitudeDeg) => {
    const place = readPlace(text);
    if (!place.ok) throw new Error(place.problem);
    expect(place.value.latitudeDeg).toBeCloseTo(latitudeDeg, 9);
    expect(place.value.longitudeDeg).toBeCloseTo(longitudeDeg, 9);
  });

  it.each([
    ['46.5', 'written like'],
    ['91 N 21 W', 'Latitude: At most 90'],
    ['46 N 181 W', 'Longitude: At most 180'],
    ['46 75 N 21 W', 'Latitude'],
    ['46,5, 21,25', 'written like'],
    ['46 30', 'written like'],
    ['hello 3 4', 'written like'],
  ])('refuses %s', (text, words) => {
    expect(readPlace(text)).toMatchObject({
      ok: false,
      problem: expect.stringContaining(words) as string,
    });
  });
});

describe('a radial and distance as a pilot types them', () => {
  it.each([
    ['QEV 310 radial, 14 miles', 310, 14],
    ['qev radial 310 distance 14.5', 310, 14.5],
    ['QEV 310/14', 310, 14],
    ['QEV 045 8,5 NM', 45, 8.5],
    ['QEV310014', 310, 14],
    ['QEV 360 14D', 0, 14],
  ])('%s', (text, radialDeg, dmeNm) => {
    expect(readFix(text)).toEqual({
      ok: true,
      value: { kind: 'radial', ident: 'QEV', radialDeg, dmeNm },
    });
  });

  it('takes an ident alone for the station, and a place for a place', () => {
    expect(readFix('qev')).toEqual({ ok: true, value: { kind: 'station', ident: 'QEV' } });
    expect(readFix('46.5 N 21.25 W')).toMatchObject({ ok: true, value: { kind: 'place' } });
  });

  it.each(['QEV 361 14', 'QEV 310 0', 'QEV 310', 'QEV 310 300', ''])('refuses %s', (text) => {
    expect(readFix(text).ok).toBe(false);
  });

  it('lies on the radial by the declination of the station, nearer than the slant range says', () => {
    const station = {
      ident: 'QEV',
      latitudeDeg: 46.5,
      longitudeDeg: -21.25,
      elevationFt: 0,
      declinationDegEast: -7,
      hasDme: true,
    };
    const fix = { radialDeg: stationDeg(310), dmeNm: 2 };
    const line = geodesicTo(station, placeOnRadial(station, fix, 6076.12));
    expect(line.azimuthDeg).toBeCloseTo(303, 6);
    expect(line.distanceNm).toBeCloseTo(Math.sqrt(3), 4);
  });
});
