import type { LibraryStation } from '../../src/station/library/library-station.ts';
import type { FromImport, ImportTally, ToImport } from './import-messages.ts';

/** The navaids of the world take 2 MB; more than ten times that is another file. */
const MOST_BYTES = 24 * 1024 * 1024;

/** What was read of a file: what it comes to, and the stations that are to be kept. */
export interface FileRead {
  readonly tally: ImportTally;
  readonly changes: readonly LibraryStation[];
}

/** An import under way. */
export interface Importing {
  /** Rejects with a sentence for the pilot. */
  readonly done: Promise<FileRead>;
  readonly cancel: () => void;
}

/** Reads a CSV file of navaids beside the page, so that the page stays quick; nothing is kept yet. */
export function importFile(
  file: File,
  year: number,
  onProgress: (lines: number, fraction: number) => void,
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
  const ask = (message: ToImport): void => {
    worker.postMessage(message);
  };
  let cancel = (): void => undefined;
  const done = new Promise<FileRead>((resolve, reject) => {
    let tally: ImportTally | null = null;
    const changes: LibraryStation[] = [];
    cancel = () => {
      reject(new Error('Stopped. Nothing was taken.'));
    };
    worker.onmessage = ({ data }: MessageEvent<FromImport>) => {
      if (data.kind === 'progress') onProgress(data.lines, data.fraction);
      else if (data.kind === 'refused') reject(new Error(data.problem));
      else {
        if (data.kind === 'read') tally = data.tally;
        else changes.push(...data.stations);
        const isAll = data.kind === 'stations' && data.stations.length === 0;
        if (isAll && tally !== null) resolve({ tally, changes });
        else ask({ kind: 'more' });
      }
    };
    worker.onerror = () => {
      reject(new Error('The file cannot be read here. Nothing was taken.'));
    };
    ask({ kind: 'file', file, year });
  }).finally(() => {
    worker.terminate();
  });
  return { done, cancel };
}
