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

/** So many are read or written before the page gets a turn. */
const AT_A_TIME = 1000;

/** All stations that this device keeps. */
export async function allStations(): Promise<readonly LibraryStation[]> {
  const { store } = (await disk()).transaction('stations');
  const stations: LibraryStation[] = [];
  for (let after: string | null = null; ;) {
    const range: IDBKeyRange | null = after === null ? null : IDBKeyRange.lowerBound(after, true);
    const some: readonly LibraryStation[] = await store.getAll(range, AT_A_TIME);
    stations.push(...some);
    if (some.length < AT_A_TIME) return stations;
    after = some.at(-1)?.id ?? null;
  }
}

/** Puts some stations in and takes others out, all of it or nothing; tells how many it has come to. */
export async function changeStations(
  put: readonly LibraryStation[],
  takeOut: readonly string[],
  onProgress: (count: number) => void = () => undefined,
): Promise<void> {
  const transaction = (await disk()).transaction('stations', 'readwrite');
  const { store } = transaction;
  const steps = [
    ...put.map((station) => () => store.put(station)),
    ...takeOut.map((id) => () => store.delete(id)),
  ];
  // One of many that fails undoes them all, and this tells of it; the many need not.
  transaction.done.catch(() => undefined);
  for (let from = 0; from < steps.length; from += AT_A_TIME) {
    await Promise.all(steps.slice(from, from + AT_A_TIME).map((step) => step()));
    onProgress(Math.min(steps.length, from + AT_A_TIME));
  }
  await transaction.done;
}
