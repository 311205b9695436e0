import { parentPort } from 'node:worker_threads';
import type { LibraryStation } from '../src/station/library/library-station.ts';
import { readNavaids } from '../src/station/library/read-navaids.ts';
import type { Imported } from '../src/wire/library-station.ts';
import type { ImportAnswer, ImportQuestion } from './import-messages.ts';

/** So many stations are handed over at a time: the thread that takes them has others to answer. */
const AT_A_TIME = 1000;

const library = new Map<string, LibraryStation>();
const given: { csv: Uint8Array; changes: readonly LibraryStation[] } = {
  csv: new Uint8Array(0),
  changes: [],
};

// The decoder would throw the mark at the beginning of the file away, and one at the beginning of any line too.
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function readUtf8(bytes: Uint8Array): string | null {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
}

function read(year: number): ImportAnswer {
  const merge = readNavaids(given.csv, readUtf8, library, year);
  if (!merge.ok) return { kind: 'refused', problems: merge.problem };
  const { added, updated, skipped, warnings, changes } = merge.value;
  given.changes = changes;
  const told: Imported = {
    added,
    updated,
    skipped: [...skipped],
    ...(warnings.length === 0 ? {} : { warnings: [...warnings] }),
  };
  return { kind: 'read', json: new TextEncoder().encode(JSON.stringify(told)) };
}

function answer(question: ImportQuestion): ImportAnswer {
  switch (question.kind) {
    case 'library': {
      if (question.isFirst) library.clear();
      for (const body of question.bodies) {
        const station = JSON.parse(body) as LibraryStation;
        library.set(station.id, station);
      }
      return { kind: 'heard' };
    }
    case 'file':
      if (question.csv !== null) given.csv = question.csv;
      return read(question.year);
    case 'changes': {
      const some = given.changes.slice(0, AT_A_TIME);
      given.changes = given.changes.slice(AT_A_TIME);
      return {
        kind: 'changes',
        bodies: some.map((station) => [station.id, JSON.stringify(station)] as const),
      };
    }
  }
}

parentPort?.on('message', (question: ImportQuestion) => {
  const told = answer(question);
  parentPort?.postMessage(told, told.kind === 'read' ? [told.json.buffer] : []);
});
