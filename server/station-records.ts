import type Database from 'better-sqlite3';
import type { LibraryStation } from '../src/station/library/library-station.ts';
import { indexStations, type StationIndex } from '../src/station/library/find-stations.ts';
import type { KeptBody } from './import-messages.ts';

/** Many stations on their way into the library; it shows nothing of them before they are kept. */
export interface Arriving {
  /** Some more of them. */
  readonly take: (bodies: readonly KeptBody[]) => void;
  /** Adds or replaces; all of them or none. Returns only when they are on the disk. */
  readonly keep: () => void;
  /** Nothing of them is kept. To be called at the end in any case. */
  readonly leave: () => void;
}

/** The durable library of stations. */
export interface StationRecords {
  /** All of them by their id. */
  readonly all: () => ReadonlyMap<string, LibraryStation>;
  /** The same, ready to be searched. */
  readonly index: () => StationIndex;
  /** So many of them as they are kept, in the order of their ids, after an id; null: from the first one. */
  readonly bodiesAfter: (id: string | null, most: number) => readonly KeptBody[];
  /** Another number whenever something has changed. */
  readonly revision: () => number;
  /** Adds or replaces one. Returns only when it is on the disk. */
  readonly keep: (station: LibraryStation) => void;
  /** Makes room for many; one lot at a time. */
  readonly arriving: () => Arriving;
  /** False when there was none. */
  readonly remove: (id: string) => boolean;
}

/** Reads and writes the stations of an open database; what was read is kept in memory from then on. */
export function stationRecordsIn(database: Database.Database): StationRecords {
  const everyBody = database.prepare<[], string>('SELECT body FROM station').pluck();
  const bodiesAfter = database
    .prepare<[string, number], KeptBody>(
      'SELECT id, body FROM station WHERE id > ? ORDER BY id LIMIT ?',
    )
    .raw();
  const put = database.prepare<[string, string]>(
    'INSERT INTO station (id, body) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET body = excluded.body',
  );
  const takeOut = database.prepare<[string]>('DELETE FROM station WHERE id = ?');
  let library: Map<string, LibraryStation> | null = null;
  let index: StationIndex | null = null;
  let revision = 0;
  const change = (stations: readonly LibraryStation[]): void => {
    for (const station of stations) library?.set(station.id, station);
    index = null;
    revision += 1;
  };
  const all = (): ReadonlyMap<string, LibraryStation> => {
    library ??= new Map(everyBody.all().map((body) => idAndStation(body)));
    return library;
  };
  const arriving = arrivingIn(database);
  return {
    all,
    index: () => {
      index ??= indexStations([...all().values()].toSorted(byId));
      return index;
    },
    // No id is empty, so all of them come after the empty one.
    bodiesAfter: (id, most) => bodiesAfter.all(id ?? '', most),
    revision: () => revision,
    keep: (station) => {
      put.run(station.id, JSON.stringify(station));
      change([station]);
    },
    arriving: () => arriving(change),
    remove: (id) => {
      const isGone = takeOut.run(id).changes === 1;
      if (!isGone) return false;
      library?.delete(id);
      change([]);
      return true;
    },
  };
}

function idAndStation(body: string): readonly [string, LibraryStation] {
  const station = JSON.parse(body) as LibraryStation;
  return [station.id, station];
}

function byId(one: LibraryStation, other: LibraryStation): number {
  return one.id < other.id ? -1 : 1;
}

/**
 * What arrives waits in a table of this connection alone, in memory, so that it can be taken bit by bit while others
 * are answered, and comes into the library in one statement: all or nothing, also in a power cut.
 */
function arrivingIn(
  database: Database.Database,
): (onKept: (stations: readonly LibraryStation[]) => void) => Arriving {
  database.pragma('temp_store = MEMORY');
  database.exec(
    'CREATE TEMP TABLE arriving (id TEXT PRIMARY KEY, body TEXT) STRICT, WITHOUT ROWID',
  );
  const put = database.prepare<[string, string]>('INSERT INTO arriving (id, body) VALUES (?, ?)');
  const putAll = database.transaction((bodies: readonly KeptBody[]) => {
    for (const [id, body] of bodies) put.run(id, body);
  });
  const keepAll = database.prepare(
    `INSERT INTO station (id, body) SELECT id, body FROM arriving WHERE true
     ON CONFLICT (id) DO UPDATE SET body = excluded.body`,
  );
  const clear = database.prepare('DELETE FROM arriving');
  return (onKept) => {
    let stations: LibraryStation[] = [];
    clear.run();
    return {
      take: (bodies) => {
        putAll(bodies);
        for (const [, body] of bodies) stations.push(JSON.parse(body) as LibraryStation);
      },
      keep: () => {
        if (stations.length === 0) return;
        keepAll.run();
        onKept(stations);
      },
      leave: () => {
        stations = [];
        clear.run();
      },
    };
  };
}
