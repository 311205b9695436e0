import type { Worker } from 'node:worker_threads';
import type { ImportAnswer, ImportQuestion } from './import-messages.ts';
import { fieldRefusal, refusal } from './problems.ts';
import { startWorker } from './start-worker.ts';
import type { StationRecords } from './station-records.ts';

/** Takes CSV files into the library beside the event loop, so that everything else is answered meanwhile. */
export interface StationImports {
  /**
   * One file after the other; gives what was added, updated and skipped, as JSON, when it is on the disk. Rejects with
   * a refusal when nothing was taken. Once nobody waits for the answer, nothing is taken.
   */
  take(csv: Uint8Array<ArrayBuffer>, year: number, isGone: () => boolean): Promise<Uint8Array>;
  /** Whether so many wait that no more are taken in. */
  isFull(): boolean;
  /** Ends the reading; what is waiting is refused. */
  close(): Promise<void>;
}

const MOST_WAITING = 8;
const LONGEST_MS = 120_000;
const AT_A_TIME = 1000;
/** So often a file is read anew because the library was changed meanwhile by hand. */
const MOST_TRIES = 5;

/** A queue of its own for a library. */
export function openStationImports(stations: StationRecords): StationImports {
  let last: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  let isClosed = false;
  let running: Worker | null = null;

  const run = async (csv: Uint8Array<ArrayBuffer>, year: number, isGone: () => boolean) => {
    if (isClosed) throw busy(ENDING);
    if (isGone()) throw busy(GONE);
    const worker = startWorker('import-worker');
    running = worker;
    const timer = setTimeout(() => void worker.terminate(), LONGEST_MS);
    try {
      return await importWith(asker(worker), stations, csv, year, isGone);
    } finally {
      clearTimeout(timer);
      running = null;
      await worker.terminate();
    }
  };

  return {
    take: async (csv, year, isGone) => {
      waiting += 1;
      const mine = last.then(() => run(csv, year, isGone));
      last = mine.catch(() => undefined);
      return mine.finally(() => {
        waiting -= 1;
      });
    },
    isFull: () => waiting >= MOST_WAITING,
    close: async () => {
      isClosed = true;
      await running?.terminate();
      await last;
    },
  };
}

const ENDING = 'The server is ending. Nothing of the file was taken. Send it again later.';
const GONE = 'Nobody waits for the answer any more. Nothing of the file was taken.';
const ENDED = 'Reading the file took too long or was broken off. Nothing of it was taken.';
const CHANGED = 'The library is being changed all the time. Nothing of the file was taken.';

/** A refusal that it cannot be done now (503). */
export function busy(detail: string): Error {
  return refusal(503, detail, [{ field: 'body', expected: 'a file later', got: 'one now' }]);
}

type Ask = (question: ImportQuestion, moved?: readonly ArrayBuffer[]) => Promise<ImportAnswer>;

/** One question at a time; rejects when the worker ends before it has answered. */
function asker(worker: Worker): Ask {
  return (question, moved = []) =>
    new Promise((resolve, reject) => {
      const done = (): void => {
        worker.off('message', take).off('error', fail).off('exit', end);
      };
      const take = (answer: ImportAnswer): void => {
        done();
        resolve(answer);
      };
      const fail = (error: unknown): void => {
        done();
        console.error('importing stations:', error);
        reject(refusal(500, 'importing failed'));
      };
      const end = (): void => {
        done();
        reject(busy(ENDED));
      };
      worker.on('message', take).on('error', fail).on('exit', end);
      worker.postMessage(question, moved);
    });
}

async function importWith(
  ask: Ask,
  stations: StationRecords,
  csv: Uint8Array<ArrayBuffer>,
  year: number,
  isGone: () => boolean,
): Promise<Uint8Array> {
  const arriving = stations.arriving();
  try {
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
      arriving.leave();
      const revision = stations.revision();
      await tellLibrary(ask, stations);
      const file = tries === 1 ? csv : null;
      const answer = await ask(
        { kind: 'file', csv: file, year },
        file === null ? [] : [csv.buffer],
      );
      if (answer.kind === 'refused') throw fieldRefusal(answer.problems);
      if (answer.kind !== 'read') throw refusal(500, 'importing failed');
      await takeChanges(ask, arriving.take);
      if (isGone()) throw busy(GONE);
      // Nothing else runs between this look and the keeping.
      if (stations.revision() !== revision) continue;
      arriving.keep();
      return answer.json;
    }
    throw busy(CHANGED);
  } finally {
    arriving.leave();
  }
}

/** In pieces: reading a large library in one go would keep everybody else waiting. */
async function tellLibrary(ask: Ask, stations: StationRecords): Promise<void> {
  let isFirst = true;
  for (let after: string | null = null; ;) {
    const bodies = stations.bodiesAfter(after, AT_A_TIME);
    await ask({ kind: 'library', bodies: bodies.map(([, body]) => body), isFirst });
    if (bodies.length < AT_A_TIME) return;
    after = bodies.at(-1)?.[0] ?? null;
    isFirst = false;
  }
}

async function takeChanges(
  ask: Ask,
  take: (bodies: readonly (readonly [string, string])[]) => void,
): Promise<void> {
  for (;;) {
    const answer = await ask({ kind: 'changes' });
    if (answer.kind !== 'changes' || answer.bodies.length === 0) return;
    take(answer.bodies);
  }
}
