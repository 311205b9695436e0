import type { LibraryStation } from './library-station.ts';
import { stationFromRow, type NavaidRow } from './navaid-row.ts';

/** A row of a file with the line on which it begins, from 1. */
export interface NumberedRow {
  readonly line: number;
  readonly row: NavaidRow;
}

/** A row that was not taken, and why. */
export interface SkippedRow {
  readonly line: number;
  readonly reason: string;
}

/** What an import does to a library: what is to be kept now, and what is told. */
export interface Merge {
  /** New and changed stations only. */
  readonly changes: readonly LibraryStation[];
  readonly added: number;
  readonly updated: number;
  readonly unchanged: number;
  readonly skipped: readonly SkippedRow[];
}

/**
 * What importing rows does to a library: stations are told apart by the number of their row, never by ident.
 *
 * A station that the pilot has changed by hand is left alone, and so is what is the same already, so importing a
 * file again changes nothing. A number that stands twice in one file is taken once. `year`: decimal, for
 * declinations that are missing. Stations of the library that the file does not have stay.
 */
export function mergeRows(
  library: ReadonlyMap<string, LibraryStation>,
  rows: Iterable<NumberedRow>,
  year: number,
): Merge {
  const changes = new Map<string, LibraryStation>();
  const skipped: SkippedRow[] = [];
  const seenOnLine = new Map<string, number>();
  let added = 0;
  let updated = 0;
  let unchanged = 0;
  for (const { line, row } of rows) {
    const read = stationFromRow(row, year);
    if (!read.ok) {
      skipped.push({ line, reason: read.problem });
      continue;
    }
    const station = read.value;
    const twice = seenOnLine.get(station.id);
    const kept = library.get(station.id);
    if (twice !== undefined) {
      skipped.push({ line, reason: `id ${station.id} stands on line ${twice} already.` });
    } else if (kept?.isByHand === true) {
      skipped.push({ line, reason: `${kept.ident} was changed by hand here and is kept so.` });
    } else if (kept && isSame(kept, station)) unchanged += 1;
    else {
      changes.set(station.id, station);
      if (kept) updated += 1;
      else added += 1;
    }
    seenOnLine.set(station.id, twice ?? line);
  }
  return { changes: [...changes.values()], added, updated, unchanged, skipped };
}

/** A declination from the model drifts from day to day: that alone is no change. */
function isSame(kept: LibraryStation, read: LibraryStation): boolean {
  const isBothModel = kept.declinationFrom === 'model' && read.declinationFrom === 'model';
  const alike = isBothModel ? { ...read, declinationDegEast: kept.declinationDegEast } : read;
  return canonical(kept) === canonical(alike);
}

function canonical(station: LibraryStation): string {
  const { dme, ...rest } = station;
  const site = dme && [dme.latitudeDeg, dme.longitudeDeg, dme.elevationFt];
  return JSON.stringify([Object.entries(rest).toSorted(([a], [b]) => (a < b ? -1 : 1)), site]);
}
