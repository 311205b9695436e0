import { computed, signal, type ReadonlySignal } from '@preact/signals';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { indexStations, type StationIndex } from '../../src/station/library/find-stations.ts';
import { allStations, changeStations } from './station-disk.ts';

const kept = signal<ReadonlyMap<string, LibraryStation> | null>(null);
let loading: Promise<void> | null = null;

/** The stations of this device by their id; null until they have been read from disk. */
export const library: ReadonlySignal<ReadonlyMap<string, LibraryStation> | null> = kept;

/** The same, ready to be searched. */
export const stationIndex: ReadonlySignal<StationIndex> = computed(() =>
  indexStations([...(kept.value?.values() ?? [])]),
);

/** Reads the library once; rejects where the browser keeps nothing. */
export function loadLibrary(): Promise<void> {
  loading ??= allStations().then(
    (stations) => {
      kept.value = new Map(stations.map((station) => [station.id, station]));
    },
    (reason: unknown) => {
      loading = null;
      throw new Error('This browser does not let the page keep stations.', { cause: reason });
    },
  );
  return loading;
}

/** Adds or replaces stations; gives what puts everything back as it was. */
export async function putStations(
  stations: readonly LibraryStation[],
  onProgress?: (count: number) => void,
): Promise<() => Promise<void>> {
  await loadLibrary();
  const before = kept.peek() ?? new Map<string, LibraryStation>();
  await changeStations(stations, [], onProgress);
  // What was changed meanwhile stays.
  const now = kept.peek() ?? before;
  kept.value = new Map([...now, ...stations.map((each) => [each.id, each] as const)]);
  return () => putBack(before, stations);
}

/** Takes a station out; gives what brings it back. */
export async function removeStation(station: LibraryStation): Promise<() => Promise<void>> {
  await loadLibrary();
  await changeStations([], [station.id]);
  kept.value = new Map([...(kept.peek() ?? [])].filter(([id]) => id !== station.id));
  return async () => {
    await putStations([station]);
  };
}

async function putBack(
  before: ReadonlyMap<string, LibraryStation>,
  changed: readonly LibraryStation[],
): Promise<void> {
  const restored = changed.flatMap(({ id }) => before.get(id) ?? []);
  const added = changed.filter(({ id }) => !before.has(id)).map(({ id }) => id);
  await changeStations(restored, added);
  const now = new Map(kept.peek() ?? []);
  for (const id of added) now.delete(id);
  for (const station of restored) now.set(station.id, station);
  kept.value = now;
}
