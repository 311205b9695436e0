import { pipeline } from 'node:stream/promises';
import { Transform } from 'node:stream';
import { CsvError, parse } from 'csv-parse';
import type { Result } from '../src/base/result.ts';
import type { LibraryStation } from '../src/station/library/library-station.ts';
import {
  checkColumns,
  mergeRows,
  namedRow,
  type Merge,
  type NumberedRow,
  type SkippedRow,
} from '../src/station/library/merge-stations.ts';
import { fieldRefusal, refusal } from './problems.ts';

/** The world's navaids take 2 MB; ten times that is a mistake. */
export const MOST_CSV_BYTES = 24 * 1024 * 1024;

interface Parsed {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

/**
 * Reads an open navaid CSV as it comes in and says what it does to the library. Nothing is kept here.
 *
 * Throws a refusal for what is no such CSV: no columns, a quote that is never closed, more than 24 MB.
 */
export async function readNavaids(
  body: NodeJS.ReadableStream,
  library: ReadonlyMap<string, LibraryStation>,
  year: number,
): Promise<Merge> {
  let columns: Result<readonly string[]> | null = null;
  const rows: NumberedRow[] = [];
  const skipped: SkippedRow[] = [];
  const parser = parse({
    bom: true,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
    max_record_size: 64 * 1024,
  });
  const take = async (parsed: AsyncIterable<Parsed>): Promise<void> => {
    for await (const { record, info } of parsed) {
      if (columns === null) {
        columns = checkColumns(record.map((each) => each.trim()));
        continue;
      }
      // A file with other columns is read to its end all the same, so that the refusal reaches who sends it.
      if (!columns.ok) continue;
      const named = namedRow(columns.value, record);
      if (named.ok) rows.push({ line: info.lines, row: named.value });
      else skipped.push({ line: info.lines, reason: named.problem });
    }
  };
  const limit = atMost(MOST_CSV_BYTES);
  await pipeline(body, limit, parser, take).catch((error: unknown) => {
    if (limit.isOver()) throw tooLarge();
    throw error instanceof CsvError ? broken(error) : error;
  });
  if (limit.isOver()) throw tooLarge();
  // TypeScript does not see that the reading above may have set it.
  const head = columns as Result<readonly string[]> | null;
  if (head === null)
    throw fieldRefusal([{ field: 'body', expected: 'a CSV file with navaids', got: 'nothing' }]);
  if (!head.ok) throw fieldRefusal(head.problem);
  const merge = mergeRows(library, rows, year);
  return {
    ...merge,
    skipped: [...merge.skipped, ...skipped].toSorted((one, other) => one.line - other.line),
  };
}

function broken(error: CsvError): Error {
  const line = Number(error['lines'] ?? 0);
  const got =
    error.code === 'CSV_QUOTE_NOT_CLOSED'
      ? `a quote that is opened on line ${line} or before and never closed`
      : `something else on line ${line}`;
  return fieldRefusal([{ field: 'body', expected: 'CSV as by RFC 4180', got }]);
}

/**
 * Lets so many bytes through. What comes after is read and dropped, because a connection that is broken off while
 * the other end still sends loses the refusal; but not for ever.
 */
function atMost(bytes: number): Transform & { readonly isOver: () => boolean } {
  let seen = 0;
  const limit = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      seen += chunk.length;
      if (seen <= bytes) done(null, chunk);
      else if (seen < 4 * bytes) done();
      else done(tooLarge());
    },
  });
  return Object.assign(limit, { isOver: () => seen > bytes });
}

/** The refusal of a file that is too large. */
export function tooLarge(): Error {
  const most = `${MOST_CSV_BYTES / 1024 / 1024} MB`;
  return refusal(413, `The file is larger than ${most}. Nothing of it was taken.`, [
    { field: 'body', expected: `at most ${most}`, got: 'more' },
  ]);
}
