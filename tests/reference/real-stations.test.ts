import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { cosDeg, sinDeg, turnDeg, wrap180 } from '../../src/base/angle.ts';
import { stationDeg, trueDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { magneticFromTrue } from '../../src/earth/norths.ts';
import { variationDegEast } from '../../src/earth/variation.ts';
import { datedLeg } from '../../src/leg/leg-frame.ts';
import { variationNear } from '../../src/leg/local-norths.ts';
import { frequencyProblems } from '../../src/station/frequency.ts';
import { stationFromTrue, trueFromStation } from '../../src/station/radial.ts';

// OurAirports open data (public domain, dump of August 2026). It lies beside the checkout, never in it.
const FILE = path.join(import.meta.dirname, '../../../shared/data/navaids.csv');

interface Row {
  readonly ident: string;
  readonly type: string;
  readonly frequencyKhz: number;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly declinationDegEast: number;
  readonly variationDegEast: number | null;
}

/** The stations that carry a declination. The file quotes nothing, so that a comma always parts. */
function realStations(): readonly Row[] {
  if (!existsSync(FILE))
    throw new Error(`${FILE} is missing: this test needs the real stations in it`);
  const [head = '', ...lines] = readFileSync(FILE, 'utf8').trim().split(/\r?\n/);
  const columns = head.split(',');
  return lines.flatMap((line) => {
    const cells = line.split(',');
    const cell = (name: string): string => cells[columns.indexOf(name)] ?? '';
    if (cell('slaved_variation_deg') === '') return [];
    const variation = cell('magnetic_variation_deg');
    return {
      ident: cell('ident'),
      type: cell('type'),
      frequencyKhz: Number(cell('frequency_khz')),
      latitudeDeg: Number(cell('latitude_deg')),
      longitudeDeg: Number(cell('longitude_deg')),
      declinationDegEast: Number(cell('slaved_variation_deg')),
      variationDegEast: variation === '' ? null : Number(variation),
    };
  });
}

const FULL_CIRCLE = Array.from({ length: 360 }, (_, degree) => degree);

const isSame = (oneDeg: number, otherDeg: number): boolean =>
  Math.abs(turnDeg(oneDeg, otherDeg)) < 1e-9;

const DAY = '2026-08-15';
const ALTITUDE_FT = 15_000;

/** How far the leg's plane of variation is from WMM2025 itself, at worst on a circle about the station. */
function worstVariationError(row: Row, nm: number): number {
  const station = { ...row, elevationFt: 0, hasDme: false };
  const leg = datedLeg({ station, direction: 'to', courseDeg: 0, altitudeFt: ALTITUDE_FT }, DAY);
  if (!leg.ok) return Infinity;
  const errors = [0, 45, 90, 135, 180, 225, 270, 315].map((azimuth) => {
    const model = variationDegEast(placeAt(row, trueDeg(azimuth), nm), DAY, ALTITUDE_FT);
    const near = variationNear(leg.value, nm * sinDeg(azimuth), nm * cosDeg(azimuth));
    return model.ok ? Math.abs(wrap180(near - model.value)) : Infinity;
  });
  return Math.max(...errors);
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

describe('real stations: OurAirports open data, ../shared/data/navaids.csv', () => {
  test('there are more than 3,000 with a declination', () => {
    expect(realStations().length).toBeGreaterThan(3_000);
  });

  test('at every one of them radials go to true, by the declination, and come back', () => {
    const wrong = realStations().filter((station) =>
      FULL_CIRCLE.some((radial) => {
        const direction = trueFromStation(stationDeg(radial), station);
        const back = stationFromTrue(direction, station);
        return !isSame(radial, back) || !isSame(direction, radial + station.declinationDegEast);
      }),
    );
    expect(wrong).toEqual([]);
  });

  test('at every one of them true directions go to radials and come back', () => {
    const wrong = realStations().filter((station) =>
      FULL_CIRCLE.some((direction) => {
        const radial = stationFromTrue(trueDeg(direction), station);
        return !isSame(direction, trueFromStation(radial, station));
      }),
    );
    expect(wrong).toEqual([]);
  });

  test('by local variation instead of declination radials would be wrong by more than a degree', () => {
    const errors = realStations().flatMap((station) => {
      const local = variationDegEast(station, '2026-08-15');
      if (!local.ok) return [];
      const byVariation = magneticFromTrue(trueFromStation(stationDeg(90), station), local.value);
      return Math.abs(turnDeg(90, byVariation));
    });
    expect(errors.length).toBeGreaterThan(3_000);
    expect(median(errors)).toBeGreaterThan(1);
  });

  test.each([
    [50, 0.05],
    [100, 0.2],
  ])('%d NM from 98 in 100 of them the leg knows the variation to %d degrees', (nm, limitDeg) => {
    const stations = realStations();
    const beyond = stations.filter((station) => worstVariationError(station, nm) > limitDeg);
    expect(beyond.length, beyond.map(({ ident }) => ident).join(' ')).toBeLessThan(
      stations.length / 50,
    );
  });

  test('the file’s own variation, by an older model, is near ours', () => {
    const apart = realStations().flatMap((station) => {
      const local = variationDegEast(station, '2026-08-15');
      if (!local.ok || station.variationDegEast === null) return [];
      return Math.abs(turnDeg(station.variationDegEast, local.value));
    });
    // The field drifts by 0.1 degrees a year in most places; the rows are many years old.
    expect(median(apart)).toBeLessThan(2);
  });

  test('nearly every VOR among them has a frequency that we accept', () => {
    const vors = realStations().filter(({ type }) => type.startsWith('VOR'));
    const odd = vors.filter(
      ({ frequencyKhz }) => frequencyProblems(frequencyKhz / 1000, 'f').length > 0,
    );
    expect(odd.length, odd.map(({ ident }) => ident).join(' ')).toBeLessThan(vors.length / 200);
  });
});
