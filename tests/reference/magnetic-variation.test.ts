import geomagnetism from 'geomagnetism';
import { describe, expect, test } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { METRES_PER_FT } from '../../src/base/units.ts';
import { modelVariationDegEast, variationDegEast } from '../../src/earth/variation.ts';
import report from './data/wmm2025-report-table.json' with { type: 'json' };
import values from './data/wmm2025-test-values.json' with { type: 'json' };
import { expectNearDeg } from './near.ts';

const FT_PER_KM = 1000 / METRES_PER_FT;

describe('variation: NOAA/NCEI and BGS, WMM2025 test values', () => {
  test.each(report.rows)('report table: $year, $heightKm km, $lat $lon: $decl', (row) => {
    const place = { latitudeDeg: row.lat, longitudeDeg: row.lon };
    const decl = modelVariationDegEast(place, row.year, row.heightKm * FT_PER_KM);
    expectNearDeg(decl, row.decl, 0.01, 'WMM2025 report');
  });

  test.each(values.rows)('100 rows: $year, $heightKm km, $lat $lon: $decl', (row) => {
    const place = { latitudeDeg: row.lat, longitudeDeg: row.lon };
    const decl = modelVariationDegEast(place, row.year, row.heightKm * FT_PER_KM);
    expectNearDeg(decl, row.decl, 0.01, 'WMM2025_TestValues.txt');
  });

  test('the rows for a whole year also come out for its first of January', () => {
    const rows = values.rows.filter(({ year }) => Number.isInteger(year));
    expect(rows).toHaveLength(50);
    for (const row of rows) {
      const place = { latitudeDeg: row.lat, longitudeDeg: row.lon };
      const given = variationDegEast(place, `${row.year}-01-01`, row.heightKm * FT_PER_KM);
      expectNearDeg(given.ok ? given.value : NaN, row.decl, 0.01, `${row.year}`);
    }
  });

  test('the rows for the middle of a year come out for its second of July', () => {
    const rows = values.rows.filter(({ year }) => !Number.isInteger(year));
    expect(rows).toHaveLength(50);
    for (const row of rows) {
      const place = { latitudeDeg: row.lat, longitudeDeg: row.lon };
      const given = variationDegEast(
        place,
        `${Math.floor(row.year)}-07-02`,
        row.heightKm * FT_PER_KM,
      );
      // Noon of 2 July is the middle: half a day at 2.5 degrees a year, the fastest row, is 0.004 degrees.
      expectNearDeg(given.ok ? given.value : NaN, row.decl, 0.015, `${row.year}`);
    }
  });
});

describe('variation: the package geomagnetism, which carries WMM2025 too', () => {
  // Its own coefficients and its own program; valid from 2024-11-13 to 2029-11-13.
  const model = geomagnetism.model(new Date('2027-01-01T00:00:00Z'));

  test('it is the same model: epoch 2025', () => {
    expect(model.epoch).toBe(2025);
  });

  test('both agree within 0.005 degrees all over the globe between 75 south and 75 north', () => {
    for (let lat = -75; lat <= 75; lat += 15) {
      for (let lon = -180; lon < 180; lon += 20) {
        const other = model.point([lat, lon, 3]).decl;
        const ours = modelVariationDegEast(
          { latitudeDeg: lat, longitudeDeg: lon },
          2027,
          3 * FT_PER_KM,
        );
        expect(Math.abs(turnDeg(other, ours)), `${lat} ${lon}`).toBeLessThan(0.005);
      }
    }
  });
});
