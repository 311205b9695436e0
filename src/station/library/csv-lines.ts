/** One record of a CSV text. */
export interface CsvRecord {
  readonly kind: 'record';
  /** The line on which it begins, from 1. */
  readonly line: number;
  readonly fields: readonly string[];
  /** The place in the text behind it. */
  readonly end: number;
}

/** A line that is no record, and why. */
export interface BrokenLine {
  readonly kind: 'broken';
  readonly line: number;
  readonly reason: string;
  readonly end: number;
}

/** More than so many letters in one field is a quote that somebody forgot to close. */
const LONGEST_FIELD = 64 * 1024;

const NEVER_CLOSED = 'a quote (") is opened and never closed.';
const INSIDE =
  'a quote (") stands inside a field: the whole field goes in quotes, a quote in it is doubled.';

/**
 * The records of a CSV text one after the other; empty lines are passed over.
 *
 * Lines end with LF or CRLF. A quote that breaks a line costs that line alone: the reading goes on with the next
 * one, where a reader that trusts the quote would take the rest of the file for one field. So a record that goes on
 * over several lines is only believed when it has as many fields as the first one had, and none of its further lines
 * would be a record by itself; the first record has to fit on its line. `delimiter`: one letter.
 * *Source:* RFC 4180, section 2, rules 1-7.
 */
export function* csvLines(
  text: string,
  delimiter: string,
): Generator<CsvRecord | BrokenLine, void, undefined> {
  let columns = 0;
  let line = 1;
  let start = 0;
  while (start < text.length) {
    const lineEnd = endOfLine(text, start);
    const nextLine = lineEnd + 1;
    const ends = lineEndsAfter(text, start);
    if (ends === start) {
      line += 1;
      start = nextLine;
      continue;
    }
    const read = recordAt(text, delimiter, start, ends, columns);
    const isOverLines = typeof read !== 'string' && read.end > nextLine;
    if (
      typeof read === 'string' ||
      (isOverLines && !isBelieved(text, delimiter, nextLine, read, columns))
    ) {
      const reason = typeof read === 'string' ? read : NEVER_CLOSED;
      yield { kind: 'broken', line, reason, end: nextLine };
      line += 1;
      start = nextLine;
      continue;
    }
    if (columns === 0) columns = read.fields.length;
    yield { kind: 'record', line, ...read };
    line += isOverLines ? lineFeeds(text, start, read.end) : 1;
    start = read.end;
  }
}

/** Whether a record really goes on over several lines. `from`: where its second one begins. */
function isBelieved(
  text: string,
  delimiter: string,
  from: number,
  { fields, end }: Read,
  columns: number,
): boolean {
  if (fields.length !== columns) return false;
  for (let start = from; start < end;) {
    const alone = recordAt(text, delimiter, start, lineEndsAfter(text, start), columns);
    const next = endOfLine(text, start) + 1;
    if (typeof alone !== 'string' && alone.end === next && alone.fields.length === columns)
      return false;
    start = next;
  }
  return true;
}

const CR = 13;

function endOfLine(text: string, from: number): number {
  const at = text.indexOf('\n', from);
  return at < 0 ? text.length : at;
}

function lineFeeds(text: string, from: number, to: number): number {
  let count = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1))
    count += 1;
  return count;
}

interface Read {
  readonly fields: readonly string[];
  readonly end: number;
}

/** The record at a place, or why there is none. `lineEnds`: where its first line does, before the line break. */
function recordAt(
  text: string,
  delimiter: string,
  start: number,
  lineEnds: number,
  columns: number,
): Read | string {
  const line = text.slice(start, lineEnds);
  if (!line.includes('"'))
    return { fields: line.split(delimiter), end: endOfLine(text, lineEnds) + 1 };
  const fields: string[] = [];
  let at = start;
  let ends = lineEnds;
  for (;;) {
    const field = text[at] === '"' ? quotedAt(text, at) : bareAt(text, delimiter, at, ends);
    if (field === null) return NEVER_CLOSED;
    if (field.end > ends) ends = lineEndsAfter(text, field.end);
    const isOverLines = ends > lineEnds;
    // Whoever reads on would read the whole file for every line of it.
    if (isOverLines && fields.length >= columns) return NEVER_CLOSED;
    fields.push(field.value);
    at = field.end;
    if (at === ends) return { fields, end: endOfLine(text, at) + 1 };
    if (text[at] !== delimiter) return isOverLines ? NEVER_CLOSED : INSIDE;
    at += 1;
  }
}

interface Field {
  readonly value: string;
  readonly end: number;
}

/** What stands without quotes up to the delimiter; where a quote is in it, up to that. */
function bareAt(text: string, delimiter: string, at: number, lineEnds: number): Field {
  const rest = text.slice(at, lineEnds);
  const found = rest.indexOf(delimiter);
  const value = found < 0 ? rest : rest.slice(0, found);
  const quote = value.indexOf('"');
  return quote < 0
    ? { value, end: at + value.length }
    : { value: value.slice(0, quote), end: at + quote };
}

function lineEndsAfter(text: string, at: number): number {
  const end = endOfLine(text, at);
  return end > at && text.charCodeAt(end - 1) === CR ? end - 1 : end;
}

/** What stands in the quotes that are opened at a place; null: they are never closed. */
function quotedAt(text: string, open: number): Field | null {
  let close = text.indexOf('"', open + 1);
  let isDoubled = false;
  while (close >= 0 && text[close + 1] === '"' && close - open <= LONGEST_FIELD) {
    isDoubled = true;
    close = text.indexOf('"', close + 2);
  }
  if (close < 0 || close - open > LONGEST_FIELD) return null;
  const value = text.slice(open + 1, close);
  return { value: isDoubled ? value.replaceAll('""', '"') : value, end: close + 1 };
}
