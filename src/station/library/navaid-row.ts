import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import { modelVariationDegEast } from '../../earth/variation.ts';
import { checkStation } from '../check-station.ts';
import { LONGEST_ID, type LibraryStation } from './library-station.ts';
import type { ServiceClass } from './service-volume.ts';
import type { AntennaSite, Station } from '../station.ts';

/** One row of an open navaid CSV, by the names of its columns. */
export type NavaidRow = Readonly<Record<string, string>>;

/** Without these no row can be read. */
export const NAVAID_COLUMNS = [
  'id',
  'ident',
  'name',
  'type',
  'frequency_khz',
  'latitude_deg',
  'longitude_deg',
  'elevation_ft',
] as const;

/** What is read of a row; the other columns of the open data are not. */
export const USED_COLUMNS: readonly string[] = [
  ...NAVAID_COLUMNS,
  'iso_country',
  'dme_latitude_deg',
  'dme_longitude_deg',
  'dme_elevation_ft',
  'slaved_variation_deg',
  'usageType',
];

/** What has radials, and whether it has a DME. A TACAN's bearings are not for a VOR receiver. */
const HAS_DME: Readonly<Record<string, boolean>> = { VOR: false, 'VOR-DME': true, VORTAC: true };

const KHZ_PER_MHZ = 1000;

/**
 * The service class taken for a usage. The usage says for which airways an aid is meant, not how far it serves, so
 * this is a stand-in: `BOTH` (low and high airways) is taken as H, which below 14,500 ft above the aid promises no
 * more than L does; `RNAV` says nothing of either and gives no class, for which the reception takes L.
 * *Source:* the meaning of the words: data dictionary of the OurAirports open data (from memory); the volumes:
 * `service-volume.ts`; which class for which usage: common practice, no source.
 */
const CLASS_OF: Readonly<Record<string, ServiceClass>> = {
  TERMINAL: 'T',
  LO: 'L',
  HI: 'H',
  BOTH: 'H',
};

/**
 * The station of one row, or in one sentence why there is none.
 *
 * Skipped are aids without radials (NDB, DME, TACAN), and rows in which the ident, the place or the frequency
 * cannot be. A missing declination is filled from the magnetic model for `year` (decimal, within the model's
 * years) and marked; a missing elevation counts as 0 ft and is marked.
 * *Source:* columns of the OurAirports open data, navaids.csv (public domain).
 */
export function stationFromRow(row: NavaidRow, year: number): Result<LibraryStation, string> {
  const type = text(row, 'type').toUpperCase();
  const hasDme = Object.hasOwn(HAS_DME, type) ? HAS_DME[type] : undefined;
  if (hasDme === undefined) return refuse(reasonForType(type));
  const id = text(row, 'id');
  if (id === '') return refuse('id: expected the number of the row, got nothing.');
  if (id.length > LONGEST_ID)
    return refuse(`id: expected at most ${LONGEST_ID} letters, got more.`);
  const station = stationIn(row, hasDme, year);
  const checked = checkStation(station, '');
  if (!checked.ok) return refuse(reasonFor(checked.problem, row));
  const serviceClass = CLASS_OF[text(row, 'usageType').toUpperCase()];
  const country = text(row, 'iso_country');
  return accept({
    ...checked.value,
    frequencyMhz: station.frequencyMhz,
    id,
    ...(serviceClass === undefined ? {} : { serviceClass }),
    ...(country === '' ? {} : { country }),
    declinationFrom: text(row, 'slaved_variation_deg') === '' ? 'model' : 'published',
    isElevationKnown: text(row, 'elevation_ft') !== '',
    isByHand: false,
  });
}

function stationIn(
  row: NavaidRow,
  hasDme: boolean,
  year: number,
): Station & { frequencyMhz: number } {
  const place = {
    latitudeDeg: degrees(row, 'latitude_deg') ?? Number.NaN,
    longitudeDeg: degrees(row, 'longitude_deg') ?? Number.NaN,
  };
  const elevationFt = number(row, 'elevation_ft') ?? 0;
  const name = text(row, 'name');
  const dme = hasDme ? dmeSite(row, elevationFt) : undefined;
  return {
    ident: text(row, 'ident'),
    ...place,
    elevationFt,
    declinationDegEast:
      degrees(row, 'slaved_variation_deg') ?? modelVariationDegEast(place, year, elevationFt),
    hasDme,
    frequencyMhz: (number(row, 'frequency_khz') ?? Number.NaN) / KHZ_PER_MHZ,
    ...(name === '' ? {} : { name }),
    ...(dme === undefined ? {} : { dme }),
  };
}

/** The DME's own antenna, where the row gives its place. */
function dmeSite(row: NavaidRow, elevationFt: number): AntennaSite | undefined {
  const latitudeDeg = degrees(row, 'dme_latitude_deg');
  const longitudeDeg = degrees(row, 'dme_longitude_deg');
  if (latitudeDeg === undefined || longitudeDeg === undefined) return undefined;
  return {
    latitudeDeg,
    longitudeDeg,
    elevationFt: number(row, 'dme_elevation_ft') ?? elevationFt,
  };
}

const DECIMAL = /^[-+]?\d+(\.\d+)?$/;

function text(row: NavaidRow, column: string): string {
  return (Object.hasOwn(row, column) ? (row[column] ?? '') : '').trim();
}

/** A number that is there; NaN, which every check refuses, for one that is no number. */
function number(row: NavaidRow, column: string): number | undefined {
  const given = text(row, column);
  if (given === '') return undefined;
  return DECIMAL.test(given) ? Number(given) : Number.NaN;
}

/**
 * The same for an angle, in which a comma can only be a decimal one, as a spreadsheet of some countries writes it. In
 * feet and kilohertz it could part the thousands as well, so there it is refused.
 */
function degrees(row: NavaidRow, column: string): number | undefined {
  const given = text(row, column);
  const typed = /^[-+]?\d+,\d+$/.test(given) ? given.replace(',', '.') : given;
  return typed === '' ? undefined : DECIMAL.test(typed) ? Number(typed) : Number.NaN;
}

function reasonForType(type: string): string {
  if (type === '') return 'type: expected VOR, VOR-DME or VORTAC, got nothing.';
  if (type.startsWith('NDB')) return `${type}: a beacon without radials.`;
  if (type === 'DME' || type === 'TACAN') return `${type}: distance only, no radials for a VOR.`;
  return `type: expected VOR, VOR-DME or VORTAC, got ${type.slice(0, 40)}.`;
}

/** The columns behind the fields of a station. */
const COLUMN_OF: Readonly<Record<string, string>> = {
  '.ident': 'ident',
  '.latitudeDeg': 'latitude_deg',
  '.longitudeDeg': 'longitude_deg',
  '.elevationFt': 'elevation_ft',
  '.declinationDegEast': 'slaved_variation_deg',
  '.frequencyMhz': 'frequency_khz',
  '.dme.latitudeDeg': 'dme_latitude_deg',
  '.dme.longitudeDeg': 'dme_longitude_deg',
  '.dme.elevationFt': 'dme_elevation_ft',
};

function reasonFor(problems: readonly FieldProblem[], row: NavaidRow): string {
  return problems
    .map(({ field, expected }) => {
      const column = COLUMN_OF[field] ?? field;
      return `${column}: expected ${expected}, got ${text(row, column).slice(0, 40) || 'nothing'}.`;
    })
    .join(' ');
}
