import { describe, expect, test } from 'vitest';
import { keyedSamples } from '../../src/ident/synthesis.ts';
import { repeatedTimeline } from '../../src/ident/timeline.ts';
import { codeOf, LETTERS } from '../bench/ident-air-keying.ts';
import { envelopeOf, lengthsAtHalfHeight } from './measured-sound.ts';

/** Twenty samples to a cycle of 1020 Hz: the envelope has no ripple there. */
const RATE_HZ = 20_400;

/** On and off in turn, in dots, of some letters keyed as one ident: from the table and the rule. */
function unitsOf(ident: string): number[] {
  return Array.from(ident).flatMap((letter, place) => {
    const elements = Array.from(codeOf(letter), (each) => (each === '-' ? 3 : 1));
    const units = elements.flatMap((each, index) => (index === 0 ? [each] : [1, each]));
    return place === 0 ? units : [3, ...units];
  });
}

function measured(ident: string, wpm: number, rateHz: number, toneHz: number): number[] {
  const marks = repeatedTimeline(ident, { wpm, repeats: 1 });
  const samples = keyedSamples(marks, { sampleRateHz: rateHz, toneHz });
  return lengthsAtHalfHeight(envelopeOf(samples, toneHz, rateHz), rateHz);
}

/** The largest of the errors, as a part of what the length should be. */
function worstError(lengths: readonly number[], units: readonly number[], unitS: number): number {
  return Math.max(...units.map((each, at) => Math.abs((lengths[at] ?? 0) / (each * unitS) - 1)));
}

const THREES = LETTERS.match(/.{1,3}/g) ?? [];

describe('ITU-R M.1677-1, annex 1: every letter as it is played', () => {
  test.each([5, 7, 10, 15])(
    'at %i words a minute each mark and gap is right to two per cent',
    (wpm) => {
      for (const ident of THREES) {
        const lengths = measured(ident, wpm, RATE_HZ, 1020);
        const units = unitsOf(ident);
        expect(lengths, ident).toHaveLength(units.length);
        expect(worstError(lengths, units, 1.2 / wpm), ident).toBeLessThan(0.02);
      }
    },
  );

  test.each([
    [8000, 1350],
    [16_000, 1020],
    [22_050, 985],
    [44_100, 1055],
    [48_000, 1350],
  ])('also at %i samples a second and a tone of %i Hz', (rateHz, toneHz) => {
    const units = unitsOf('QEV');
    const lengths = measured('QEV', 7, rateHz, toneHz);
    expect(lengths).toHaveLength(units.length);
    expect(worstError(lengths, units, 1.2 / 7)).toBeLessThan(0.02);
  });
});

describe('repeats as they are played', () => {
  test.each([5, 7, 15])('at %i words a minute they begin 10 s apart', (wpm) => {
    const marks = repeatedTimeline('EK', { wpm, repeats: 3, intervalS: 10 });
    const lengths = lengthsAtHalfHeight(
      envelopeOf(keyedSamples(marks, { sampleRateHz: RATE_HZ }), 1020, RATE_HZ),
      RATE_HZ,
    );
    const once = unitsOf('EK').length;
    const start = (turn: number): number =>
      lengths.slice(0, turn * (once + 1)).reduce((sum, each) => sum + each, 0);
    expect(start(1)).toBeCloseTo(10, 2);
    expect(start(2)).toBeCloseTo(20, 2);
  });
});
