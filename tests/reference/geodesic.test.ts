import { describe, expect, test } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { METRES_PER_NM } from '../../src/base/units.ts';
import { geodesicTo, placeAt } from '../../src/earth/geodesic.ts';
import checks from './data/geodesic-checks.json' with { type: 'json' };
import lines from './data/geodesic-lines.json' with { type: 'json' };
import { expectNear, expectNearDeg } from './near.ts';

const place = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

describe('geodesics: Karney, GeographicLib test set, 20 lines', () => {
  test.each(lines.rows)('$item: distance and both azimuths between the two places', (row) => {
    const line = geodesicTo(place(row.lat1, row.lon1), place(row.lat2, row.lon2));
    // 1 mm; the azimuths are printed to 1e-9 and the ends of some lines to 1e-5 degrees only by choice.
    expectNear(line.distanceNm * METRES_PER_NM, row.s12, 0.001, row.item);
    expectNear(line.distanceNm, row.nm, 0.0005, row.item);
    expectNearDeg(line.azimuthDeg, row.azi1, 1e-9, row.item);
    expectNearDeg(line.azimuthThereDeg, row.azi2, 1e-9, row.item);
  });

  test.each(lines.rows)('$item: the azimuth and distance lead to the other place', (row) => {
    const there = placeAt(place(row.lat1, row.lon1), trueDeg(row.azi1), row.s12 / METRES_PER_NM);
    // 1e-9 degrees of azimuth over a quarter of the Earth are 2e-9 degrees at the far end.
    expectNear(there.latitudeDeg, row.lat2, 5e-9, row.item);
    expectNearDeg(there.longitudeDeg, row.lon2, 1e-8, row.item);
  });
});

describe('geodesics: Karney documentation, Geoscience Australia, Vincenty pairs, Williams', () => {
  test.each(checks.inverse)('$item ($source): the way between two places', (row) => {
    const line = geodesicTo(place(row.lat1, row.lon1), place(row.lat2, row.lon2));
    expectNear(line.distanceNm * METRES_PER_NM, row.s12, row.m, row.item);
    if (row.azi1 !== undefined) expectNearDeg(line.azimuthDeg, row.azi1, row.deg, row.item);
    if (row.azi2 !== undefined) expectNearDeg(line.azimuthThereDeg, row.azi2, row.deg, row.item);
  });

  test.each(checks.direct)('$item ($source): where an azimuth and distance lead', (row) => {
    const there = placeAt(place(row.lat1, row.lon1), trueDeg(row.azi1), row.s12 / METRES_PER_NM);
    expectNear(there.latitudeDeg, row.lat2, row.deg, row.item);
    expectNearDeg(there.longitudeDeg, row.lon2, row.deg, row.item);
  });

  test('11.30 (GL): Beijing to San Francisco, a place every 1,000 km', () => {
    const { from, rows, deg } = checks.waypoints;
    // The start azimuth is printed to 1e-5 degrees; taken from the end point instead.
    const azimuthDeg = geodesicTo(place(from.lat, from.lon), place(37.6, -122.4)).azimuthDeg;
    expectNearDeg(azimuthDeg, from.azi, deg, '11.30');
    for (const row of rows) {
      const there = placeAt(place(from.lat, from.lon), azimuthDeg, (row.km * 1000) / METRES_PER_NM);
      expectNear(there.latitudeDeg, row.lat, 1.1e-5, `${row.km} km`);
      expectNearDeg(there.longitudeDeg, row.lon, 1.1e-5, `${row.km} km`);
    }
  });

  test('11.29 (GL): a line across the date line keeps its length', () => {
    const across = geodesicTo(place(0, 179), place(0, -179));
    expectNear(across.distanceNm * METRES_PER_NM, 222_639, 0.5, '11.29');
    expect(across.azimuthDeg).toBeCloseTo(90, 9);
  });
});
