import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { impairedSamples } from '../../src/ident/impaired.ts';
import { stationTimeline } from '../../src/ident/interleaved.ts';
import type { StationMark } from '../../src/ident/interleaved.ts';
import { identTimeline, repeatedTimeline } from '../../src/ident/timeline.ts';
import { unevenMarks } from '../../src/ident/uneven.ts';

const RATE_HZ = 8000;

/** The start and the sender of each ident. */
function identsOf(marks: readonly StationMark[]): readonly { startS: number; of: string }[] {
  const starts = marks.filter((mark, index) => mark.identIndex !== marks[index - 1]?.identIndex);
  return starts.map(({ startS, of }) => ({ startS, of }));
}

describe('the ident of a VOR with its DME', () => {
  test('ICAO Annex 10 volume I, 3.5.3.6.4 b: 40 s in four equal parts, the DME in one of them', () => {
    expect(identsOf(stationTimeline('QEV', { parts: 5 }))).toEqual([
      { startS: 0, of: 'vor' },
      { startS: 10, of: 'vor' },
      { startS: 20, of: 'vor' },
      { startS: 30, of: 'dme' },
      { startS: 40, of: 'vor' },
    ]);
  });

  test('AIM 1-1-7 f: the DME once for three or four of the VOR, on 1350 Hz against 1020 Hz', () => {
    const four = stationTimeline('QEV', { vorForOneDme: 4 });
    expect(identsOf(four).map(({ of }) => of)).toEqual(['vor', 'vor', 'vor', 'vor', 'dme']);
    expect(new Set(four.map(({ of, toneHz }) => `${of} ${toneHz}`))).toEqual(
      new Set(['vor 1020', 'dme 1350']),
    );
  });

  test('AIM 1-1-7 f: the DME alone is heard about every 30 to 40 s, after the quiet of the VOR', () => {
    const alone = stationTimeline('QEV', { keyed: 'dme', parts: 8 });
    expect(identsOf(alone)).toEqual([
      { startS: 30, of: 'dme' },
      { startS: 70, of: 'dme' },
    ]);
    expect(new Set(alone.map(({ identIndex }) => identIndex))).toEqual(new Set([0, 1]));
  });

  test('without DME is the VOR in every part', () => {
    const vor = stationTimeline('QEV', { keyed: 'vor' });
    expect(identsOf(vor).map(({ of }) => of)).toEqual(['vor', 'vor', 'vor', 'vor']);
  });

  test('too long for its part makes the parts longer, all alike', () => {
    const slow = identsOf(stationTimeline('YQJC', { wpm: 4 }));
    const steps = slow.slice(1).map(({ startS }, index) => startS - (slow[index]?.startS ?? 0));
    expect(Math.min(...steps)).toBeGreaterThan(10);
    expect(Math.max(...steps)).toBeCloseTo(Math.min(...steps), 9);
  });

  test('keys each ident as it is keyed alone', () => {
    const third = stationTimeline('QEV').filter(({ identIndex }) => identIndex === 2);
    for (const [index, { startS, durationS }] of identTimeline('QEV').entries()) {
      expect(third[index]?.durationS).toBe(durationS);
      expect((third[index]?.startS ?? 0) - 20).toBeCloseTo(startS, 9);
    }
  });
});

describe('marks keyed by hand', () => {
  const idents = fc.stringMatching(/^[A-Z]{1,4}$/);
  const hands = fc.record({
    seed: fc.integer(),
    jitter: fc.double({ min: 0, max: 0.3, noNaN: true }),
  });

  test('are the same dots and dashes in the same order, and never touch', () => {
    fc.assert(
      fc.property(
        idents,
        hands,
        fc.double({ min: 4, max: 15, noNaN: true }),
        (ident, hand, wpm) => {
          const book = repeatedTimeline(ident, { wpm, repeats: 3 });
          const uneven = unevenMarks(book, hand);
          expect(uneven.map(({ element }) => element)).toEqual(book.map(({ element }) => element));
          for (const [index, mark] of uneven.entries()) {
            const before = uneven[index - 1];
            if (before) expect(mark.startS).toBeGreaterThan(before.startS + before.durationS);
            expect(mark.durationS).toBeGreaterThan(0);
          }
        },
      ),
    );
  });

  test('follow from the seed', () => {
    const book = repeatedTimeline('QEV');
    expect(unevenMarks(book, { seed: 7 })).toEqual(unevenMarks(book, { seed: 7 }));
    expect(unevenMarks(book, { seed: 7 })).not.toEqual(unevenMarks(book, { seed: 8 }));
  });

  test('of a steady hand differ from the book in the length of the dash alone', () => {
    const book = identTimeline('QEV');
    const steady = unevenMarks(book, { seed: 3, jitter: 0 });
    const ratios = steady.map(({ durationS }, index) => durationS / (book[index]?.durationS ?? 1));
    for (const [index, ratio] of ratios.entries())
      if (book[index]?.element === 'dot') expect(ratio).toBeCloseTo(1, 9);
    const dashes = new Set(
      ratios.filter((_, index) => book[index]?.element === 'dash').map((ratio) => ratio.toFixed(6)),
    );
    expect(dashes.size).toBe(1);
  });

  test('leave each repeat where it begins, and keep what else a mark carries', () => {
    const book = stationTimeline('QEV');
    const uneven = unevenMarks(book, { seed: 5 });
    expect(identsOf(uneven)).toEqual(identsOf(book));
    expect(uneven.map(({ toneHz }) => toneHz)).toEqual(book.map(({ toneHz }) => toneHz));
  });
});

/** Power of some samples in 300 to 3300 Hz, by a plain discrete Fourier transform of stretches of 0.1 s. */
function powerInBand(samples: Float32Array, rateHz = RATE_HZ): number {
  const size = rateHz / 10;
  let sum = 0;
  let stretches = 0;
  for (let from = 0; from + size <= samples.length; from += size, stretches += 1) {
    for (let bin = 30; bin <= 330; bin += 1) {
      let [re, im] = [0, 0];
      for (let n = 0; n < size; n += 1) {
        const turn = (2 * Math.PI * bin * n) / size;
        re += (samples[from + n] ?? 0) * Math.cos(turn);
        im += (samples[from + n] ?? 0) * Math.sin(turn);
      }
      sum += (2 * (re * re + im * im)) / (size * size);
    }
  }
  return sum / stretches;
}

const db = (ratio: number): number => 10 * Math.log10(ratio);
const HOLD = [{ startS: 0, durationS: 2, element: 'dash', letterIndex: 0 }] as const;

describe('what comes between a station and the ear', () => {
  test.each([
    ['receiver', 10],
    ['receiver', -6],
    ['cabin', 10],
    ['cabin', 0],
  ] as const)('%s noise lies %d dB under the held tone in 3 kHz', (of, toneOverDb) => {
    const both = { sampleRateHz: RATE_HZ, leadS: 2, tailS: 0.1, noise: { of, toneOverDb } };
    const sound = impairedSamples(HOLD, both);
    const noise = powerInBand(sound.slice(0, 1.9 * RATE_HZ));
    const withTone = powerInBand(sound.slice(2.1 * RATE_HZ, 3.9 * RATE_HZ));
    // Two seconds of noise: its power is known to about half a decibel, and what is left after taking it off too.
    expect(Math.abs(db((withTone - noise) / noise) - toneOverDb)).toBeLessThan(1.2);
  });

  test('noise follows from the seed alone', () => {
    const noise = { of: 'cabin', toneOverDb: 0 } as const;
    const sound = impairedSamples(HOLD, { seed: 4, noise });
    expect(impairedSamples(HOLD, { seed: 4, noise })).toEqual(sound);
    expect(impairedSamples(HOLD, { seed: 5, noise })).not.toEqual(sound);
  });

  test('a voice lies as far under the tone while it is spoken, however long its pauses', () => {
    const spoken = Float32Array.from({ length: 4 * RATE_HZ }, (_, index) =>
      index < 2 * RATE_HZ ? 0.01 * Math.sin((2 * Math.PI * 500 * index) / RATE_HZ) : 0,
    );
    const voice = { samples: spoken, toneOverDb: -6 };
    const sound = impairedSamples(HOLD, { sampleRateHz: RATE_HZ, leadS: 2, tailS: 0.1, voice });
    const talk = powerInBand(sound.slice(0, 1.9 * RATE_HZ));
    const tone = powerInBand(sound.slice(2.1 * RATE_HZ, 3.9 * RATE_HZ));
    expect(db(tone / talk)).toBeCloseTo(-6, 1);
  });

  test('fading lets the tone swell and fade within its decibels', () => {
    const long = [{ ...HOLD[0], durationS: 20 }];
    const sound = impairedSamples(long, { sampleRateHz: RATE_HZ, fadingDb: 6, seed: 2 });
    const levels = Array.from({ length: 19 }, (_, second) => {
      const from = Math.round((1.5 + second) * RATE_HZ);
      return db(powerInBand(sound.slice(from, from + RATE_HZ / 10)));
    });
    const spread = Math.max(...levels) - Math.min(...levels);
    expect(spread).toBeGreaterThan(3);
    expect(spread).toBeLessThanOrEqual(12);
  });

  test('each mark sounds on its own tone', () => {
    const marks = stationTimeline('E').map((mark) => ({ ...mark, durationS: 0.5 }));
    const sound = impairedSamples(marks, { sampleRateHz: RATE_HZ, leadS: 1 });
    const zeroCrossings = (fromS: number): number => {
      const part = sound.slice((fromS + 0.1) * RATE_HZ, (fromS + 0.4) * RATE_HZ);
      return part.filter((sample, index) => index > 0 && sample >= 0 && (part[index - 1] ?? 0) < 0)
        .length;
    };
    expect(Math.abs(zeroCrossings(1) / 0.3 - 1020)).toBeLessThan(5);
    expect(Math.abs(zeroCrossings(31) / 0.3 - 1350)).toBeLessThan(5);
  });

  test('is never clipped, however strong, and without anything is silent', () => {
    const loud = impairedSamples(HOLD, {
      noise: { of: 'receiver', toneOverDb: -20 },
      fadingDb: 10,
    });
    const peak = loud.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(peak).toBeCloseTo(0.9, 3);
    expect(loud.filter((sample) => Math.abs(sample) > 0.899)).toHaveLength(1);
    expect(impairedSamples([]).every((sample) => sample === 0)).toBe(true);
  });
});
