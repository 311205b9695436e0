import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { confirmIdent } from '../../src/ident/decode.ts';
import { codeOf } from '../bench/ident-air-keying.ts';
import type { KeyedMark } from '../bench/ident-air-keying.ts';
import { marksOf, soundOf } from '../unit/ident-marks.ts';

// The sound is that of the benches: nothing of src/ident.

const LETTERS = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ');

/** Three letters that a few beeps could not be. */
const ident = fc
  .array(fc.constantFrom(...LETTERS), { minLength: 3, maxLength: 3 })
  .map((letters) => letters.join(''))
  .filter((each) => Array.from(each, codeOf).join('').length >= 5);

/** From 5 words a minute, and from a pause of one word gap, 7 dots. *Source:* ITU-R M.1677-1. */
const keying = fc.record({
  ident,
  wpm: fc.double({ min: 5, max: 10, noNaN: true }),
  pauseDots: fc.oneof(fc.constant(7), fc.double({ min: 7, max: 30, noNaN: true })),
  repeats: fc.integer({ min: 1, max: 4 }),
});

interface Keyed {
  readonly ident: string;
  readonly wpm: number;
  readonly pauseDots: number;
  readonly repeats: number;
}

/** The ident again and again with the same pause between end and start, with quiet at both ends. */
function repeated({ ident: asked, wpm, pauseDots, repeats }: Keyed): {
  readonly marks: readonly KeyedMark[];
  readonly lengthS: number;
} {
  const quietS = 1.5;
  const marks: KeyedMark[] = [];
  let startS = quietS;
  let endS = 0;
  for (let n = 0; n < repeats; n += 1) {
    marks.push(...marksOf(asked, { startS, wpm }));
    const last = marks.at(-1);
    endS = last === undefined ? 0 : last.startS + last.durationS;
    startS = endS + (pauseDots * 1.2) / wpm;
  }
  return { marks, lengthS: endS + quietS };
}

function expectConfirmed(keyed: Keyed, snr3kDb: number | null): void {
  const { marks, lengthS } = repeated(keyed);
  const { verdict, heard, why } = confirmIdent(soundOf(marks, lengthS, snr3kDb), keyed.ident);
  expect({ verdict, heard, why }).toEqual({ verdict: 'confirmed', heard: keyed.ident, why: null });
}

describe('an ident that is repeated after any pause from a word gap on is one ident', () => {
  test.each([
    ['clean', null],
    ['10 dB above the noise', 10],
  ])('%s', (_, snr3kDb) => {
    fc.assert(
      fc.property(keying, (keyed) => {
        expectConfirmed(keyed, snr3kDb);
      }),
      { numRuns: 12 },
    );
  });

  // What stands in for the others: a long ident of four letters could take in the start of the next one.
  test.each<Keyed>([
    { ident: 'QEV', wpm: 5, pauseDots: 12, repeats: 3 },
    { ident: 'JYQ', wpm: 6, pauseDots: 7, repeats: 3 },
    { ident: 'QVL', wpm: 7, pauseDots: 6.8, repeats: 4 },
    { ident: 'QAN', wpm: 9.9, pauseDots: 7, repeats: 4 },
  ])('$ident at $wpm words a minute, $repeats times', (keyed) => {
    expectConfirmed(keyed, null);
  });
});
