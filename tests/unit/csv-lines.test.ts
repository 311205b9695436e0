import { describe, expect, it } from 'vitest';
import { csvLines } from '../../src/station/library/csv-lines.ts';

/** Each record as its line and fields; each broken line as its line and reason. */
const read = (text: string, delimiter = ',') =>
  [...csvLines(text, delimiter)].map((each) =>
    each.kind === 'record' ? [each.line, each.fields] : [each.line, each.reason],
  );

describe('CSV by RFC 4180, section 2', () => {
  it.each([
    ['LF', 'a,b\n1,2\n'],
    ['CRLF', 'a,b\r\n1,2\r\n'],
    ['no line break at the end', 'a,b\n1,2'],
    ['quotes around fields', '"a","b"\r\n"1",2'],
    ['empty lines between', '\n\r\na,b\n\n\n1,2\n\n'],
  ])('reads lines that end with %s', (_what, text) => {
    expect(read(text).map(([, fields]) => fields)).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });

  it('keeps commas, doubled quotes and line breaks that stand in quotes', () => {
    expect(read('a,b\n"1,5","say ""go"""\n"two\r\nlines",x\n3,4')).toEqual([
      [1, ['a', 'b']],
      [2, ['1,5', 'say "go"']],
      [3, ['two\r\nlines', 'x']],
      [5, ['3', '4']],
    ]);
  });

  it('parts fields by another letter where it is told to', () => {
    expect(read('a;b\n1,5;"x;y"\n', ';')).toEqual([
      [1, ['a', 'b']],
      [2, ['1,5', 'x;y']],
    ]);
  });

  it('finds nothing in nothing', () => {
    expect(read('')).toEqual([]);
    expect(read('\r\n\n')).toEqual([]);
  });
});

describe('a stray quote', () => {
  it.each([
    ['opened and never closed', '1,"QEV,x'],
    ['opened, and closed by the quotes of a later line', '1,"QEV,x\n4,"K","y"'],
    ['inside a field', '1,QE"V,x'],
    ['behind a quoted field', '1,"QEV"x,y'],
    ['alone at the end', '1,QEV,"'],
  ])('%s costs its line alone', (_what, broken) => {
    const lines = read(`a,b,c\n${broken}\n2,ZUP,z\n3,"WOK",w\n`);
    const [head, first, ...rest] = lines;
    expect(head).toEqual([1, ['a', 'b', 'c']]);
    expect(first?.[0]).toBe(2);
    expect(first?.[1]).toMatch(/quote/);
    const fields = rest.map(([, each]) => (each as string[]).join(' '));
    expect(fields.slice(-2)).toEqual(['2 ZUP z', '3 WOK w']);
    expect(fields.some((each) => each === '4 K y')).toBe(broken.includes('"K"'));
  });

  it('that is closed on a later line swallows no line that is a record by itself', () => {
    expect(read('a,b\n1,"x\n2,y\n3,"\n4,z')).toEqual([
      [1, ['a', 'b']],
      [2, expect.stringContaining('never closed')],
      [3, ['2', 'y']],
      [4, expect.stringContaining('never closed')],
      [5, ['4', 'z']],
    ]);
  });

  it('on the first line leaves no columns to go by', () => {
    expect(read('a,"b\n1,2\n')[0]).toEqual([1, expect.stringContaining('never closed')]);
  });
});
