import { stringify } from 'csv-stringify/sync';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { csvLines } from '../../src/station/library/csv-lines.ts';

const fieldsOf = (text: string, delimiter = ',') =>
  [...csvLines(text, delimiter)].map((each) =>
    each.kind === 'record' ? each.fields : `line ${each.line}: ${each.reason}`,
  );

const DELIMITER = fc.constantFrom(',', ';', '\t');
const BREAK = fc.constantFrom('\n', '\r\n');
/** Letters that mean something in CSV, and some that do not. */
const FIELD = fc.string({ unit: fc.constantFrom('a', 'é', ' ', ',', ';', '\t', '"', '1') });
const TABLE = fc.integer({ min: 2, max: 6 }).chain((columns) =>
  fc.array(fc.array(FIELD, { minLength: columns, maxLength: columns }), {
    minLength: 1,
    maxLength: 8,
  }),
);
const write = (rows: readonly (readonly string[])[], delimiter: string, lineBreak: string) =>
  stringify(rows as string[][], { delimiter, record_delimiter: lineBreak, quoted_empty: true });

describe('against the general-purpose CSV packages csv-stringify and csv-parse', () => {
  it('what one writes is read as it was', () => {
    fc.assert(
      fc.property(TABLE, DELIMITER, BREAK, (rows, delimiter, lineBreak) => {
        expect(fieldsOf(write(rows, delimiter, lineBreak), delimiter)).toEqual(rows);
      }),
    );
  });

  it('a line with a line break in a field is read as it was', () => {
    fc.assert(
      fc.property(FIELD, FIELD, BREAK, (one, other, lineBreak) => {
        const rows = [
          ['id', 'name', 'place'],
          ['1', `${one}${lineBreak}${other}`, 'x'],
          ['2', 'y', 'z'],
        ];
        expect(fieldsOf(write(rows, ',', lineBreak))).toEqual(rows);
      }),
    );
  });

  it('a broken line costs itself and none of the others, wherever it stands', () => {
    const broken = fc.constantFrom('1,"x,y', '"', 'a"b,c', '"a"b,c', 'a,"b""');
    fc.assert(
      fc.property(TABLE, broken, fc.nat(), BREAK, (rows, line, where, lineBreak) => {
        const lines = rows.map((row) => write([row], ',', ''));
        const at = 1 + (where % rows.length);
        const text = [...lines.slice(0, at), line, ...lines.slice(at)].join(lineBreak);
        const found = fieldsOf(text);
        expect(found.filter((each) => typeof each !== 'string')).toEqual(rows);
        expect(found[at]).toMatch(new RegExp(`^line ${at + 1}: a quote`));
      }),
    );
  });

  it('any text at all is read to its end, each line counted once', () => {
    const text = fc.string({ unit: fc.constantFrom('a', ',', '"', '\n', '\r'), maxLength: 60 });
    fc.assert(
      fc.property(text, (csv) => {
        const lines = [...csvLines(csv, ',')].map(({ line }) => line);
        expect(lines).toEqual([...new Set(lines)].toSorted((one, other) => one - other));
        expect(lines.at(-1) ?? 0).toBeLessThanOrEqual(csv.split('\n').length);
      }),
    );
  });

  it('the open data of the world (OurAirports, public domain) is read alike, field by field', () => {
    const csv = readFileSync('../shared/data/navaids.csv', 'utf8');
    expect(fieldsOf(csv)).toEqual(parse(csv, { bom: true }));
  });
});
