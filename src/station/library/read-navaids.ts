import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import { csvLines } from './csv-lines.ts';
import { readCsvText, type CsvText, type ReadUtf8 } from './csv-text.ts';
import type { LibraryStation } from './library-station.ts';
import { mergeRows, type Merge, type NumberedRow, type SkippedRow } from './merge-stations.ts';
import { checkColumns, delimiterOf, rowReader } from './navaid-columns.ts';

/** What an import does to a library, with what is doubtful about the file as a whole. */
export interface NavaidImport extends Merge {
  /** In plain sentences; empty when there is nothing. */
  readonly warnings: readonly string[];
}

/** Hears after every so many lines how far the reading has come, 0 to 1. */
export type OnProgress = (lines: number, fraction: number) => void;

const EACH_LINES = 1000;

/**
 * Reads the bytes of an open navaid CSV and says what it does to a library; nothing is kept here.
 *
 * Fields are parted by commas, semicolons or tabs, as the first line has them. A line that cannot be read is skipped,
 * with its number and why, and costs no other. Refuses what is no such file: nothing in it, no text, a first line
 * that is broken or without the columns. `year`: decimal, for declinations that are missing.
 */
export function readNavaids(
  bytes: Uint8Array,
  readUtf8: ReadUtf8,
  library: ReadonlyMap<string, LibraryStation>,
  year: number,
  onProgress: OnProgress = () => undefined,
): Result<NavaidImport> {
  const read = readCsvText(bytes, readUtf8);
  if (!read.ok) return read;
  const { text } = read.value;
  const lines = csvLines(text, delimiterOf(text));
  const head = lines.next();
  if (head.done === true)
    return refuse([{ field: 'body', expected: 'a CSV file with navaids', got: 'nothing' }]);
  if (head.value.kind === 'broken') return refuse([brokenHead(head.value.line, head.value.reason)]);
  const columns = checkColumns(head.value.fields.map((each) => each.trim()));
  if (!columns.ok) return columns;
  const unread: SkippedRow[] = [];
  const rows = rowsOf(lines, columns.value, unread, (count, end) => {
    onProgress(count, Math.min(1, end / text.length));
  });
  const merge = mergeRows(library, rows, year);
  const skipped = [...merge.skipped, ...unread].toSorted((one, other) => one.line - other.line);
  return accept({ ...merge, skipped, warnings: warningsOf(read.value, merge, skipped) });
}

function brokenHead(line: number, reason: string): FieldProblem {
  return {
    field: 'body',
    expected: 'a first line with the names of the columns',
    got: `line ${line}: ${reason.replace(/\.$/, '')}`,
  };
}

/** The lines that have as many fields as there are columns; the others go to `unread`. */
function* rowsOf(
  lines: ReturnType<typeof csvLines>,
  columns: readonly string[],
  unread: SkippedRow[],
  onLines: (count: number, end: number) => void,
): Generator<NumberedRow, void, undefined> {
  const readRow = rowReader(columns);
  let count = 0;
  for (const each of lines) {
    const { line, end } = each;
    count += 1;
    if (count % EACH_LINES === 0) onLines(count, end);
    const row = each.kind === 'broken' ? refuse(each.reason) : readRow(each.fields);
    if (row.ok) yield { line, row: row.value };
    else unread.push({ line, reason: row.problem });
  }
}

function warningsOf(
  { foreignLines, firstForeignLine }: CsvText,
  { added, updated, unchanged }: Merge,
  skipped: readonly SkippedRow[],
): readonly string[] {
  const isBare = added + updated + unchanged + skipped.length === 0;
  return [
    ...(firstForeignLine === null
      ? []
      : [
          `Not UTF-8 on ${foreignLines === 1 ? 'line' : `${foreignLines} lines, the first is`} ${firstForeignLine}: read as Windows-1252. Check names with accents, or save the file as UTF-8 and bring it in again.`,
        ]),
    ...(isBare ? ['The file has no line under the names of its columns.'] : []),
  ];
}
