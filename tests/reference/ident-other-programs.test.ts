import { describe, expect, test } from 'vitest';
import { decodeIdent } from '../../src/ident/decode.ts';
import { identWav, readIdentRequest } from '../../src/ident/ident-request.ts';
import { randomIdent } from '../bench/ident-air-keying.ts';
import { chanceFrom } from '../bench/track-chance.ts';
import { keyedByEbook2cw, MULTIMON_RATE_HZ, readByMultimon } from './radio-programs.ts';

function randomIdents(count: number, seed: number): string[] {
  const chance = chanceFrom(seed);
  return Array.from({ length: count }, () => randomIdent(chance));
}

describe('ebook2cw 0.8 (Debian) keys, the ear of the tool reads', () => {
  // Starts 80 programs: long on a busy machine.
  test('40 random idents at 7 words a minute and 1020 Hz are read', { timeout: 300_000 }, () => {
    const keyed = keyedByEbook2cw(randomIdents(40, 71), 7, 1020);
    const read = keyed.map((each) => decodeIdent(each).letters);
    expect(read).toEqual(keyed.map(({ ident }) => ident));
  });
});

describe('the tool keys, multimon-ng 1.2 (Debian) reads', () => {
  test.each(randomIdents(20, 72))('%s, told the speed of 7 words a minute', (ident) => {
    const request = readIdentRequest(ident, { sampleRateHz: MULTIMON_RATE_HZ, repeats: 2 });
    if (!request.ok) throw new Error(JSON.stringify(request));
    expect(readByMultimon(identWav(request.value), 1200 / 7)).toEqual([ident, ident]);
  });
});
