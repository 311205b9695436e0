import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import geomagnetism from 'geomagnetism';
import type { Beacon } from './air.ts';

// OurAirports open data (public domain, dump of August 2026). It lies beside the checkout, never in it.
const FILE = path.join(import.meta.dirname, '../../../shared/data/navaids.csv');

/** A real VOR-DME, to be typed in. */
export interface RealStation extends Beacon {
  readonly frequencyMhz: number;
  /** Local variation by the model on the day, east positive. */
  readonly variationDegEast: number;
}

const MHZ_PER_KHZ = 0.001;

/**
 * A VOR-DME whose radials are aligned to something else than today’s variation: the first of the file in
 * the middle latitudes with a declination that is 4 to 6 degrees off, its DME at the same place.
 */
export function stationOffTheModel(dateIso: string): RealStation {
  if (!existsSync(FILE))
    throw new Error(`${FILE} is missing: this test needs the real stations in it`);
  const [head = '', ...lines] = readFileSync(FILE, 'utf8').trim().split(/\r?\n/);
  const columns = head.split(',');
  const model = geomagnetism.model(new Date(`${dateIso}T12:00:00Z`));
  for (const line of lines) {
    const cells = line.split(',');
    const cell = (name: string): string => cells[columns.indexOf(name)] ?? '';
    const needed = ['slaved_variation_deg', 'elevation_ft'].map(cell);
    if (cell('type') !== 'VOR-DME' || needed.includes('') || cell('dme_latitude_deg') !== '')
      continue;
    const station = {
      ident: cell('ident'),
      latitudeDeg: Number(cell('latitude_deg')),
      longitudeDeg: Number(cell('longitude_deg')),
      elevationFt: Number(cell('elevation_ft')),
      declinationDegEast: Number(cell('slaved_variation_deg')),
      frequencyMhz: Number(cell('frequency_khz')) * MHZ_PER_KHZ,
    };
    const variationDegEast = model.point([station.latitudeDeg, station.longitudeDeg, 1]).decl;
    const apart = Math.abs(station.declinationDegEast - variationDegEast);
    const isMiddle = station.latitudeDeg > 35 && station.latitudeDeg < 60;
    if (isMiddle && apart > 4 && apart < 6) return { ...station, variationDegEast };
  }
  throw new Error('No such station in the file.');
}
