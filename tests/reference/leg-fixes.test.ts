import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import geographiclib from 'geographiclib-geodesic';
import { describe, expect, it, test } from 'vitest';
import { trueDeg } from '../../src/base/bearing.ts';
import { geodesicTo, placeAt } from '../../src/earth/geodesic.ts';
import { crossingRadial } from '../../src/leg/route/crossing-radial.ts';
import { proposeRoute } from '../../src/leg/route/propose-route.ts';
import { mergeRows } from '../../src/station/library/merge-stations.ts';
import { stationAt } from '../unit/station-sets.ts';
import { expectNear, expectNearDeg } from './near.ts';

const NM_PER_RAD = (180 / Math.PI) * 60;
const low = { altitudeFt: 0 };

describe('two radials that cross: Ed Williams, Aviation Formulary 1.46, "Intersecting radials"', () => {
  const reo = { latitudeDeg: 42.6, longitudeDeg: -117.866 };
  const bke = stationAt('BKE', { latitudeDeg: 44.84, longitudeDeg: -117.806 });
  const crossing = { latitudeDeg: 43.572, longitudeDeg: -116.189 };
  const own = geodesicTo(reo, crossing);
  const found = crossingRadial(
    { place: crossing, trackDegTrue: own.azimuthThereDeg, rangeNm: own.distanceNm, ...low },
    { ...bke, declinationDegEast: 0 },
  );

  // The formulary's Earth is a sphere and its answer printed to 0.001 degrees: 0.2 degrees and 0.5 % for both.
  it('the leg lies on radial 051 (true) of the one station', () => {
    expectNearDeg(own.azimuthDeg, 51, 0.2, 'radial');
  });

  it('it is radial 137 (true) of the other', () => {
    expectNearDeg(found?.radialDeg ?? NaN, 137, 0.2, 'radial');
  });

  it('which is 0.029986 radians away and crosses at 1.500667 radians', () => {
    expectNear(found?.distanceNm ?? NaN, 0.029986 * NM_PER_RAD, 0.5, 'NM');
    expectNear(found?.angleDeg ?? NaN, (1.500667 * 180) / Math.PI, 0.3, 'degrees');
  });

  it('by the station’s own declination: 16 east makes it radial 121', () => {
    const aligned = crossingRadial(
      { place: crossing, trackDegTrue: own.azimuthThereDeg, rangeNm: own.distanceNm, ...low },
      { ...bke, declinationDegEast: 16 },
    );
    expectNearDeg(aligned?.radialDeg ?? NaN, 121, 0.2, 'radial');
  });
});

describe('how far a fix can be off: 1 degree at 60 NM is 1 NM (Pilot’s Handbook 16-27)', () => {
  const place = { latitudeDeg: 46.5, longitudeDeg: -28 };
  const square = (nm: number) =>
    crossingRadial(
      { place, trackDegTrue: 90, rangeNm: 0, ...low },
      stationAt('ZUP', placeAt(place, trueDeg(0), nm)),
    )?.alongSdNm ?? NaN;

  it.each([60, 30, 15])('a radial wrong by 1.6 degrees, square across, %i NM away', (nm) => {
    // The rule of thumb is 4.7 % small.
    expectNear(square(nm), (1.6 * nm) / 60, (0.05 * 1.6 * nm) / 60, 'NM');
  });

  it('grows as the crossing gets flatter: at 30 degrees the second radial alone counts double', () => {
    const flat = crossingRadial(
      { place, trackDegTrue: 30, rangeNm: 0, ...low },
      stationAt('ZUP', placeAt(place, trueDeg(0), 20)),
    );
    expect(flat?.angleDeg).toBeCloseTo(30, 6);
    expectNear(flat?.alongSdNm ?? NaN, 2 * square(20), 1e-6, 'NM');
  });
});

describe('over the open navaid data (public domain, dump of August 2026), with geographiclib alone', () => {
  const file = path.join(import.meta.dirname, '../../../shared/data/navaids.csv');
  if (!existsSync(file))
    throw new Error(`${file} is missing: this test needs the real stations in it`);
  const rows: Record<string, string>[] = parse(readFileSync(file, 'utf8'), {
    columns: true,
    bom: true,
  });
  const library = mergeRows(
    new Map(),
    rows.map((row, at) => ({ line: at + 2, row })),
    2026.9,
  ).changes;
  const rowOf = new Map(rows.map((row) => [row['id'] ?? '', row]));
  const numberIn = (row: Record<string, string> | undefined, column: string): number =>
    Number(row?.[column] === '' ? NaN : row?.[column]);

  test.each([
    [48.1, 11.5, 52.4, 13.1, 5500],
    [40, -75, 33.6, -84.4, 6500],
    [47.2, 0.3, 48.9, 3.5, 4500],
    [35.5, -97.5, 41.8, -87.6, 6500],
  ])(
    '%d, %d to %d, %d at %i ft: each radial leads from its station to the checkpoint',
    (...flight) => {
      const [latitudeDeg, longitudeDeg, toLatitudeDeg, toLongitudeDeg, altitudeFt] = flight;
      const route = proposeRoute(library, {
        start: { latitudeDeg, longitudeDeg },
        destination: { latitudeDeg: toLatitudeDeg, longitudeDeg: toLongitudeDeg },
        altitudeFt,
      });
      if (!route.ok) throw new Error('no route');
      const crossings = route.value.fixes
        .flat()
        .flatMap(({ place, crossing }) => (crossing ? [{ place, crossing }] : []));
      expect(crossings.length).toBeGreaterThan(3);
      for (const { place, crossing } of crossings) {
        const row = rowOf.get(crossing.station.id);
        const line = geographiclib.Geodesic.WGS84.Inverse(
          numberIn(row, 'latitude_deg'),
          numberIn(row, 'longitude_deg'),
          place.latitudeDeg,
          place.longitudeDeg,
        );
        expectNear((line.s12 ?? NaN) / 1852, crossing.distanceNm, 1e-6, 'NM');
        expect(numberIn(row, 'frequency_khz')).toBeCloseTo(1000 * crossing.station.frequencyMhz, 6);
        const declinationDeg = numberIn(row, 'slaved_variation_deg');
        if (Number.isNaN(declinationDeg)) continue;
        expectNearDeg((line.azi1 ?? NaN) - declinationDeg, crossing.radialDeg, 1e-9, 'radial');
      }
    },
  );
});
