import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import {
  checkColumns,
  mergeRows,
  namedRow,
  type NumberedRow,
  type SkippedRow,
} from '../../src/station/library/merge-stations.ts';
import type { FromImport, ToImport } from './import-messages.ts';

/** The page hears of the progress after so many rows. */
const EACH_ROWS = 500;

interface Parsed {
  readonly record: readonly string[];
  readonly info: { readonly lines: number; readonly bytes: number };
}

function say(message: FromImport): void {
  postMessage(message);
}

/** Typed by hand: the package's types say what comes out with no options. */
const parseRows = parse as unknown as (
  text: string,
  options: Readonly<Record<string, unknown>>,
) => readonly Parsed[];

function readRows(text: string): readonly Parsed[] {
  let rows = 0;
  return parseRows(text, {
    bom: true,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
    max_record_size: 64 * 1024,
    on_record: (parsed: Parsed) => {
      rows += 1;
      const fraction = Math.min(1, parsed.info.bytes / Math.max(1, text.length));
      if (rows % EACH_ROWS === 0) say({ kind: 'progress', rows, fraction });
      return parsed;
    },
  });
}

async function importFile({ file, library, year }: ToImport): Promise<void> {
  const [head, ...rest] = readRows(await file.text());
  if (head === undefined) {
    say({ kind: 'refused', problem: 'This file is empty: a CSV file with navaids is expected.' });
    return;
  }
  const columns = checkColumns(head.record.map((each) => each.trim()));
  if (!columns.ok) {
    const [problem] = columns.problem;
    say({
      kind: 'refused',
      problem: `This is no list of navaids: expected ${problem?.expected ?? ''}, got ${problem?.got ?? ''}.`,
    });
    return;
  }
  const rows: NumberedRow[] = [];
  const skipped: SkippedRow[] = [];
  for (const { record, info } of rest) {
    const named = namedRow(columns.value, record);
    if (named.ok) rows.push({ line: info.lines, row: named.value });
    else skipped.push({ line: info.lines, reason: named.problem });
  }
  const merge = mergeRows(library, rows, year);
  const all = [...merge.skipped, ...skipped].toSorted((one, other) => one.line - other.line);
  say({ kind: 'done', merge: { ...merge, skipped: all } });
}

addEventListener('message', ({ data }: MessageEvent<ToImport>) => {
  importFile(data).catch((error: unknown) => {
    const where = error instanceof CsvError ? Number(error['lines'] ?? 0) : 0;
    const problem =
      where > 0
        ? `This file is no CSV: something is wrong on line ${where} or before. Nothing was taken.`
        : 'This file cannot be read. Nothing was taken. Choose it again.';
    say({ kind: 'refused', problem });
  });
});
