import type { LibraryStation } from '../../src/station/library/library-station.ts';
import type { Merge } from '../../src/station/library/merge-stations.ts';
import type { FromImport, ToImport } from './import-messages.ts';

/** The navaids of the world take 2 MB; more than ten times that is another file. */
const MOST_BYTES = 24 * 1024 * 1024;

/** An import under way. */
export interface Importing {
  /** Rejects with a sentence for the pilot. */
  readonly done: Promise<Merge>;
  readonly cancel: () => void;
}

/** Reads a CSV file of navaids beside the page, so that the page stays quick; nothing is kept yet. */
export function importFile(
  file: File,
  library: ReadonlyMap<string, LibraryStation>,
  year: number,
  onProgress: (rows: number, fraction: number) => void,
): Importing {
  if (file.size > MOST_BYTES) {
    const size = `${(file.size / 1024 / 1024).toFixed(0)} MB`;
    return {
      done: Promise.reject(
        new Error(`This file has ${size}; at most 24 MB are read. Is it the right one?`),
      ),
      cancel: () => undefined,
    };
  }
  const worker = new Worker(new URL('./import-worker.ts', import.meta.url), { type: 'module' });
  let cancel = (): void => undefined;
  const done = new Promise<Merge>((resolve, reject) => {
    cancel = () => {
      reject(new Error('Stopped. Nothing was taken.'));
    };
    worker.onmessage = ({ data }: MessageEvent<FromImport>) => {
      if (data.kind === 'progress') onProgress(data.rows, data.fraction);
      else if (data.kind === 'done') resolve(data.merge);
      else reject(new Error(data.problem));
    };
    worker.onerror = () => {
      reject(new Error('The file cannot be read here. Nothing was taken.'));
    };
    const message: ToImport = { file, library, year };
    worker.postMessage(message);
  }).finally(() => {
    worker.terminate();
  });
  return { done, cancel };
}
