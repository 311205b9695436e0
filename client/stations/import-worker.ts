import type { FieldProblem } from '../../src/base/result.ts';
import type { LibraryStation } from '../../src/station/library/library-station.ts';
import { readNavaids } from '../../src/station/library/read-navaids.ts';
import type { FromImport, ToImport } from './import-messages.ts';
import { skippedReasons } from './skipped-reasons.ts';
import { allStations } from './station-disk.ts';

/** So many stations are handed over at a time: the page has other things to do. */
const AT_A_TIME = 1000;

const found: { stations: readonly LibraryStation[] } = { stations: [] };

function say(message: FromImport): void {
  postMessage(message);
}

// The decoder would throw the mark at the beginning of the file away, and one at the beginning of any line too.
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function readUtf8(bytes: Uint8Array): string | null {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
}

async function read(file: File, year: number): Promise<void> {
  // From the disk, not from the page: handing a large library over would hold the page up.
  const library = new Map((await allStations()).map((station) => [station.id, station]));
  const bytes = new Uint8Array(await file.arrayBuffer());
  const merge = readNavaids(bytes, readUtf8, library, year, (lines, fraction) => {
    say({ kind: 'progress', lines, fraction });
  });
  if (!merge.ok) {
    say({ kind: 'refused', problem: refusalWords(merge.problem) });
    return;
  }
  const { added, updated, unchanged, skipped, warnings, changes } = merge.value;
  found.stations = changes;
  const reasons = skippedReasons(skipped);
  say({
    kind: 'read',
    tally: { added, updated, unchanged, skipped: skipped.length, reasons, warnings },
  });
}

function refusalWords(problems: readonly FieldProblem[]): string {
  const words = problems.map(({ expected, got }) => `expected ${expected}, got ${got}.`);
  return `This is no list of navaids: ${words.join(' And ')} Nothing was taken.`;
}

addEventListener('message', ({ data }: MessageEvent<ToImport>) => {
  if (data.kind === 'more') {
    say({ kind: 'stations', stations: found.stations.slice(0, AT_A_TIME) });
    found.stations = found.stations.slice(AT_A_TIME);
    return;
  }
  read(data.file, data.year).catch(() => {
    const problem = 'This file cannot be read. Nothing was taken. Choose it again.';
    say({ kind: 'refused', problem });
  });
});
