import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import { csvLines } from './csv-lines.ts';
import { NAVAID_COLUMNS, USED_COLUMNS, type NavaidRow } from './navaid-row.ts';

/** What may stand between the fields of a line: which one it is, the first line tells. */
const DELIMITERS = [',', ';', '\t'] as const;

/** The one under which most of the columns are found in the first line; a comma where none is. */
export function delimiterOf(text: string): string {
  const found = DELIMITERS.map((delimiter) => {
    const [head] = csvLines(text, delimiter);
    const names = head?.kind === 'record' ? head.fields.map((each) => each.trim()) : [];
    return { delimiter, count: NAVAID_COLUMNS.filter((each) => names.includes(each)).length };
  });
  const [best] = found.toSorted((one, other) => other.count - one.count);
  return best !== undefined && best.count > 0 ? best.delimiter : ',';
}

/**
 * The names of the columns; refuses a first line that lacks one that every row is read by, or has one twice: which
 * of the two to read, nobody can tell.
 */
export function checkColumns(columns: readonly string[]): Result<readonly string[]> {
  const missing = NAVAID_COLUMNS.filter((each) => !columns.includes(each));
  const twice = new Set(columns.filter((each, at) => each !== '' && columns.indexOf(each) < at));
  const problems: FieldProblem[] = [];
  if (missing.length > 0)
    problems.push({
      field: 'body',
      expected: `a first line with the columns ${NAVAID_COLUMNS.join(', ')}`,
      got: `none called ${missing.join(', ')}`,
    });
  if (twice.size > 0)
    problems.push({
      field: 'body',
      expected: 'a first line that names each column once',
      got: `more than one called ${[...twice].join(', ').slice(0, 200)}`,
    });
  return problems.length === 0 ? accept(columns) : refuse(problems);
}

/**
 * What reads the fields of a line by the names of the columns. A line with another number of fields is refused,
 * because which field is which cannot be told then; empty ones behind the last column do not count.
 */
export function rowReader(
  columns: readonly string[],
): (fields: readonly string[]) => Result<NavaidRow, string> {
  const used = columns.flatMap((name, at) => (USED_COLUMNS.includes(name) ? [{ name, at }] : []));
  return (fields) => {
    if (fields.length !== columns.length) {
      const isOnlyLonger = fields.slice(columns.length).every((each) => each === '');
      if (fields.length < columns.length || !isOnlyLonger)
        return refuse(
          `expected ${columns.length} columns as on the first line, got ${fields.length}.`,
        );
    }
    const row: Record<string, string> = {};
    for (const { name, at } of used) row[name] = fields[at] ?? '';
    return accept(row);
  };
}
