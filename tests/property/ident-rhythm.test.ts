import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceFrom } from '../../src/ident/drill/chance.ts';
import { LETTERS } from '../../src/ident/drill/letters.ts';
import { agreementOf, readPatterns } from '../../src/ident/look-up.ts';
import { pattern } from '../../src/ident/morse.ts';
import { fitOf, lettersOfRhythm, type Press } from '../../src/ident/rhythm.ts';
import { identTimeline } from '../../src/ident/timeline.ts';

const letter = fc.constantFrom(...LETTERS);
const ident = fc.array(letter, { minLength: 2, maxLength: 3 }).map((each) => each.join(''));
/** Both dots and dashes, so that the speed can be told from the rhythm itself. */
const mixed = ident.filter((each) => /\..*-|-.*\./.test(pattern(each)));

/** As a hand taps it: each length off by up to so much of itself. */
function tapped(asked: string, wpm: number, off: number, seed: number): readonly Press[] {
  const chance = chanceFrom(seed);
  return identTimeline(asked, { wpm }).map(({ startS, durationS }) => ({
    startS,
    durationS: durationS * (1 + off * (2 * chance() - 1)),
  }));
}

describe('a rhythm tapped by the book', () => {
  test('is read at any speed of 5 to 15 words a minute', () => {
    fc.assert(
      fc.property(mixed, fc.integer({ min: 5, max: 15 }), (asked, wpm) => {
        expect(lettersOfRhythm(tapped(asked, wpm, 0, 1)).letters).toBe(asked);
      }),
    );
  });

  test('with each press up to a fifth off fits its ident best, or nearly', () => {
    fc.assert(
      fc.property(mixed, fc.integer({ min: 6, max: 12 }), fc.nat(), (asked, wpm, seed) => {
        const fit = fitOf(tapped(asked, wpm, 0.2, seed), asked);
        expect(fit?.isWhole).toBe(true);
        expect(fit?.nats ?? -99).toBeGreaterThan(-2);
      }),
    );
  });

  test('does not fit an ident with fewer elements, and only begins one with more', () => {
    fc.assert(
      fc.property(mixed, letter, (asked, more) => {
        const presses = tapped(asked, 7, 0, 1);
        expect(fitOf(presses, asked.slice(0, 1))).toBeNull();
        expect(fitOf(presses, asked + more)?.isWhole).toBe(false);
      }),
    );
  });
});

describe('a rhythm of equal presses', () => {
  const equal = (durationS: number, gapS: number, many: number): readonly Press[] =>
    Array.from({ length: many }, (_, index) => ({ startS: index * (durationS + gapS), durationS }));

  test('close together is dots, and long with short gaps dashes', () => {
    expect(lettersOfRhythm(equal(0.17, 0.17, 3)).letters).toBe('S');
    expect(lettersOfRhythm(equal(0.5, 0.17, 3)).letters).toBe('O');
  });

  test('between a dot and a dash is not sure of a single press', () => {
    const { keyed } = lettersOfRhythm(equal(0.29, 0, 1));
    expect(keyed.flat().map(({ isSure }) => isSure)).toEqual([false]);
  });
});

describe('any presses at all', () => {
  test('are read or left out, never an error and never a figure that is none', () => {
    const press = fc.record({ startS: fc.double(), durationS: fc.double() });
    fc.assert(
      fc.property(fc.array(press, { maxLength: 12 }), ident, (presses, asked) => {
        const { patterns, letters } = lettersOfRhythm(presses);
        expect(patterns.every((each) => /^[.-]+$/.test(each))).toBe(true);
        if (letters !== null) expect(letters).toMatch(/^[A-Z]+$/);
        const nats = fitOf(presses, asked)?.nats ?? 0;
        expect(Number.isFinite(nats)).toBe(true);
      }),
    );
  });

  test('no presses are no letters', () => {
    expect(lettersOfRhythm([])).toEqual({ patterns: [], letters: null, keyed: [] });
  });
});

describe('an ident typed in full', () => {
  test('agrees whole, its beginning begins it, without gaps its gaps are elsewhere', () => {
    fc.assert(
      fc.property(ident, (asked) => {
        const typed = pattern(asked);
        expect(agreementOf(readPatterns(typed), asked)).toBe('whole');
        expect(agreementOf(readPatterns(typed.slice(0, -1)), asked)).not.toBe('whole');
        const noGaps = agreementOf(readPatterns(typed.replaceAll(' ', '')), asked);
        expect(noGaps).toBe('gaps-elsewhere');
      }),
    );
  });
});
