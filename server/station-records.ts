import type Database from 'better-sqlite3';
import type { LibraryStation } from '../src/station/library/library-station.ts';
import { indexStations, type StationIndex } from '../src/station/library/find-stations.ts';

/** The durable library of stations. */
export interface StationRecords {
  /** All of them by their id. */
  readonly all: () => ReadonlyMap<string, LibraryStation>;
  /** The same, ready to be searched. */
  readonly index: () => StationIndex;
  /** Adds or replaces; all of them or none. Returns only when they are on the disk. */
  readonly keep: (stations: readonly LibraryStation[]) => void;
  /** False when there was none. */
  readonly remove: (id: string) => boolean;
}

/** Reads and writes the stations of an open database; what was read is kept until something changes. */
export function stationRecordsIn(database: Database.Database): StationRecords {
  const everyBody = database.prepare<[], string>('SELECT body FROM station ORDER BY id').pluck();
  const put = database.prepare<[string, string]>(
    'INSERT INTO station (id, body) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET body = excluded.body',
  );
  const takeOut = database.prepare<[string]>('DELETE FROM station WHERE id = ?');
  const putAll = database.transaction((stations: readonly LibraryStation[]) => {
    for (const station of stations) put.run(station.id, JSON.stringify(station));
  });
  let library: ReadonlyMap<string, LibraryStation> | null = null;
  let index: StationIndex | null = null;
  const forget = (): void => {
    library = null;
    index = null;
  };
  const all = (): ReadonlyMap<string, LibraryStation> => {
    library ??= new Map(
      everyBody.all().map((body) => {
        const station = JSON.parse(body) as LibraryStation;
        return [station.id, station];
      }),
    );
    return library;
  };
  return {
    all,
    index: () => {
      index ??= indexStations([...all().values()]);
      return index;
    },
    keep: (stations) => {
      if (stations.length > 0) putAll.immediate(stations);
      forget();
    },
    remove: (id) => {
      const isGone = takeOut.run(id).changes === 1;
      if (isGone) forget();
      return isGone;
    },
  };
}
