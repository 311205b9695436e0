import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { LibraryStation } from '../../src/station/library/library-station.ts';

interface Disk extends DBSchema {
  stations: { key: string; value: LibraryStation };
}

let connection: Promise<IDBPDatabase<Disk>> | null = null;

// A database of its own: it can be thrown away and imported anew, the flights cannot.
function disk(): Promise<IDBPDatabase<Disk>> {
  const forget = (): void => {
    connection = null;
  };
  connection ??= openDB<Disk>('spoken-radial-stations', 1, {
    upgrade(database) {
      database.createObjectStore('stations', { keyPath: 'id' });
    },
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      forget();
    },
    terminated: forget,
  }).catch((reason: unknown) => {
    forget();
    throw reason;
  });
  return connection;
}

/** All stations that this device keeps. */
export async function allStations(): Promise<readonly LibraryStation[]> {
  return (await disk()).getAll('stations');
}

/** Adds or replaces stations, all of them or none. */
export async function keepStations(stations: readonly LibraryStation[]): Promise<void> {
  const transaction = (await disk()).transaction('stations', 'readwrite');
  await Promise.all([
    ...stations.map((station) => transaction.store.put(station)),
    transaction.done,
  ]);
}

/** Takes stations out. */
export async function dropStations(ids: readonly string[]): Promise<void> {
  const transaction = (await disk()).transaction('stations', 'readwrite');
  await Promise.all([...ids.map((id) => transaction.store.delete(id)), transaction.done]);
}
