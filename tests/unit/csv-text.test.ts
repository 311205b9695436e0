import { describe, expect, it } from 'vitest';
import { readCsvText } from '../../src/station/library/csv-text.ts';

const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const utf8 = (bytes: Uint8Array): string | null => {
  try {
    return decoder.decode(bytes);
  } catch {
    return null;
  }
};
const read = (bytes: Uint8Array | readonly number[]) =>
  readCsvText(bytes instanceof Uint8Array ? bytes : Uint8Array.from(bytes), utf8);
const bytesOf = (text: string, encoding: BufferEncoding) =>
  new Uint8Array(Buffer.from(text, encoding));
const textOf = (bytes: Uint8Array | readonly number[]): string => {
  const answer = read(bytes);
  return answer.ok ? answer.value.text : JSON.stringify(answer.problem);
};

describe('the bytes of a CSV file (WHATWG Encoding Standard)', () => {
  it('are UTF-8, with or without a byte order mark', () => {
    expect(textOf(bytesOf('é,ž\n', 'utf8'))).toBe('é,ž\n');
    expect(textOf(bytesOf('\uFEFFé,ž\n', 'utf8'))).toBe('é,ž\n');
  });

  it('are UTF-16 where its mark says so, either way round', () => {
    const little = bytesOf('\uFEFFid,é\n', 'utf16le');
    expect(textOf(little)).toBe('id,é\n');
    const big = Uint8Array.from(little, (_, at) => little[at ^ 1] ?? 0);
    expect(textOf(big)).toBe('id,é\n');
  });

  it('are Windows-1252 on a line that is no UTF-8, and UTF-8 on the others', () => {
    const mixed = Buffer.concat([
      Buffer.from('name\nZürich\n', 'utf8'),
      Buffer.from([0x5a, 0xfc, 0x72, 0x69, 0x63, 0x68, 0x0a]),
      Buffer.from('Łódź\n', 'utf8'),
      Buffer.from([0xe9, 0x0a]),
    ]);
    const answer = read(new Uint8Array(mixed));
    expect(answer).toEqual({
      ok: true,
      value: { text: 'name\nZürich\nZürich\nŁódź\né\n', foreignLines: 2, firstForeignLine: 3 },
    });
  });

  it('give the signs that Windows-1252 has in place of control codes', () => {
    // Index of windows-1252, WHATWG Encoding Standard: 80 is U+20AC, 93 and 94 the double quotes, 9C is U+0153.
    expect(textOf([0x80, 0x93, 0x9c, 0x94, 0xff, 0x0a])).toBe('\u20AC\u201C\u0153\u201D\u00FF\n');
  });

  it('get LF where lines end with CR alone', () => {
    expect(textOf(bytesOf('a,b\r1,2\r', 'utf8'))).toBe('a,b\n1,2\n');
  });

  it.each([
    ['a spreadsheet', [0x50, 0x4b, 3, 4, 0, 0], 'save it as CSV UTF-8'],
    ['zero bytes', [0x61, 0, 0x62], 'no text'],
  ])('are refused where they are %s', (_what, bytes, words) => {
    const answer = read(bytes);
    expect(answer.ok).toBe(false);
    expect(JSON.stringify(answer)).toContain(words);
  });
});
