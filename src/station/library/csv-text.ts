import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';

/** The text of a file, and how it was written. */
export interface CsvText {
  readonly text: string;
  /** How many lines are not UTF-8 and were read as Windows-1252; the first of them, from 1. */
  readonly foreignLines: number;
  readonly firstForeignLine: number | null;
}

/** Bytes as UTF-8; null where they are none. */
export type ReadUtf8 = (bytes: Uint8Array) => string | null;

/**
 * The bytes of a CSV file as text: UTF-8, with or without a mark at its beginning, or UTF-16 with one.
 *
 * A line that is no UTF-8 is read as Windows-1252, and counted: only letters beyond ASCII, those of names, can come
 * out wrong, and a file that has one such line keeps the others. Refuses what is no text: a spreadsheet, an
 * archive, anything with zero bytes in it. A file with CR alone at the end of its lines gets LF.
 * *Source:* WHATWG Encoding Standard (decode by byte order mark; index of windows-1252).
 */
export function readCsvText(bytes: Uint8Array, readUtf8: ReadUtf8): Result<CsvText> {
  const read = textOf(bytes, readUtf8);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b)
    return refuse([noText('a spreadsheet or an archive: open it there and save it as CSV UTF-8')]);
  if (read.text.includes('\0')) return refuse([noText('a file that is no text')]);
  const text = read.text.startsWith('\uFEFF') ? read.text.slice(1) : read.text;
  return accept({
    ...read,
    text: text.includes('\n') ? text : text.replaceAll('\r', '\n'),
  });
}

function noText(got: string): FieldProblem {
  return { field: 'body', expected: 'a CSV file with navaids, saved as UTF-8', got };
}

function textOf(bytes: Uint8Array, readUtf8: ReadUtf8): CsvText {
  const none = { foreignLines: 0, firstForeignLine: null };
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { text: utf16(bytes, 0), ...none };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { text: utf16(bytes, 1), ...none };
  const text = readUtf8(bytes);
  return text === null ? lineByLine(bytes, readUtf8) : { text, ...none };
}

/** `lowAt`: which byte of a pair is the low one. */
function utf16(bytes: Uint8Array, lowAt: 0 | 1): string {
  return inPieces(bytes.length >> 1, (at) => {
    const low = bytes[2 * at + lowAt] ?? 0;
    return low | ((bytes[2 * at + 1 - lowAt] ?? 0) << 8);
  });
}

const LF = 10;

function lineByLine(bytes: Uint8Array, readUtf8: ReadUtf8): CsvText {
  const lines: string[] = [];
  let foreignLines = 0;
  let firstForeignLine: number | null = null;
  for (let start = 0; start < bytes.length;) {
    const found = bytes.indexOf(LF, start);
    const end = found < 0 ? bytes.length : found + 1;
    const line = bytes.subarray(start, end);
    const text = readUtf8(line);
    lines.push(text ?? windows1252(line));
    if (text === null) {
      foreignLines += 1;
      firstForeignLine ??= lines.length;
    }
    start = end;
  }
  return { text: lines.join(''), foreignLines, firstForeignLine };
}

/** What stands at 0x80 to 0x9F; the other bytes are their own code points. */
const FROM_0X80 =
  '\u20AC\u0081\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\u008D\u017D\u008F' +
  '\u0090\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\u009D\u017E\u0178';

function windows1252(bytes: Uint8Array): string {
  return inPieces(bytes.length, (at) => {
    const byte = bytes[at] ?? 0;
    return byte >= 0x80 && byte < 0xa0 ? FROM_0X80.charCodeAt(byte - 0x80) : byte;
  });
}

/** So many letters are made at once: a call takes only so many arguments. */
const PIECE = 8192;

function inPieces(length: number, codeAt: (at: number) => number): string {
  let text = '';
  for (let from = 0; from < length; from += PIECE) {
    const count = Math.min(PIECE, length - from);
    text += String.fromCharCode(...Array.from({ length: count }, (_, at) => codeAt(from + at)));
  }
  return text;
}
