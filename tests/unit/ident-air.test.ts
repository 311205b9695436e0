import { describe, expect, test } from 'vitest';
import { makeClip } from '../bench/ident-air.ts';
import type { Clip } from '../bench/ident-air.ts';

// The figures for the ear are worth no more than the clips that they come from.

/** Power of the tone in its marks (least squares at its frequency), and of all that is left. */
function powers({ samples, sampleRateHz, toneHz, marks }: Clip): { tone: number; rest: number } {
  let tone = 0;
  let onSamples = 0;
  for (const { startS, durationS } of marks) {
    const from = Math.ceil((startS + 0.01) * sampleRateHz);
    const to = Math.floor((startS + durationS - 0.01) * sampleRateHz);
    let [re, im] = [0, 0];
    for (let index = from; index < to; index += 1) {
      const turn = (2 * Math.PI * toneHz * index) / sampleRateHz;
      re += (samples[index] ?? 0) * Math.cos(turn);
      im += (samples[index] ?? 0) * Math.sin(turn);
    }
    tone += (2 * (re * re + im * im)) / (to - from);
    onSamples += to - from;
  }
  const all = samples.reduce((sum, each) => sum + each * each, 0);
  const onS = marks.reduce((sum, { durationS }) => sum + durationS, 0);
  const mean = tone / onSamples;
  return { tone: mean, rest: all / samples.length - (mean * onS * sampleRateHz) / samples.length };
}

describe('the clips of the benches are what they are said to be', () => {
  test.each([
    [0, 8000],
    [-10, 8000],
    [-10, 16_000],
    [-6, 48_000],
  ])('a tone %i dB over the noise in 3 kHz, at %i samples a second', (db, sampleRateHz) => {
    const ratios = [1, 2, 3, 4, 5, 6].map((seed) => {
      const clip = makeClip({ seed, condition: `awgn${db}`, sampleRateHz });
      const { tone, rest } = powers(clip);
      return tone / ((rest * 3000) / (sampleRateHz / 2));
    });
    const mean = ratios.reduce((sum, each) => sum + each, 0) / ratios.length;
    expect(Math.abs(10 * Math.log10(mean) - db)).toBeLessThan(0.6);
  });

  test('a clip with a voice 6 dB stronger than the tone holds that voice', () => {
    const { tone, rest } = powers(makeClip({ seed: 4, condition: 'voice-6' }));
    // Pauses lower the mean below that of the spoken parts.
    expect(10 * Math.log10(rest / tone)).toBeGreaterThan(3);
    expect(10 * Math.log10(rest / tone)).toBeLessThan(7);
  });

  test('the same seed gives the same clip, another one another', () => {
    const sameAsFirst = (seed: number): boolean => {
      const { samples } = makeClip({ seed, condition: 'all0' });
      return Buffer.from(samples.buffer).equals(Buffer.from(first.samples.buffer));
    };
    const first = makeClip({ seed: 8, condition: 'all0' });
    expect(sameAsFirst(8)).toBe(true);
    expect(sameAsFirst(9)).toBe(false);
  });

  test('an ident of a machine at 7 words a minute has dots of 171 ms and dashes of three', () => {
    const { marks } = makeClip({ seed: 3, condition: 'awgn20', ident: 'QEV' });
    const lengths = marks.map(({ durationS }) => Math.round(1000 * durationS));
    expect(lengths).toEqual([514, 514, 171, 514, 171, 171, 171, 171, 514]);
  });
});
