import { describe, expect, test } from 'vitest';
import type { Question } from '../../src/ident/drill/event.ts';
import { questionSound } from '../../src/ident/drill/question-sound.ts';
import { copy } from './practice-log.ts';

/** Power of the samples at one frequency over a stretch, by one bin of a Fourier transform. */
function powerAt(samples: Float32Array, hz: number, rateHz: number): number {
  let re = 0;
  let im = 0;
  for (const [index, sample] of samples.entries()) {
    const turn = (2 * Math.PI * hz * index) / rateHz;
    re += sample * Math.cos(turn);
    im += sample * Math.sin(turn);
  }
  return (2 * (re * re + im * im)) / samples.length ** 2;
}

function meanSquare(samples: Float32Array): number {
  return samples.reduce((sum, each) => sum + each * each, 0) / samples.length;
}

/** The stretch of the first mark of a question that starts with a long one, clear of its edges. */
function firstDash(question: Question): Float32Array {
  const { samples, sampleRateHz } = questionSound(question, null);
  return samples.subarray(Math.round(0.65 * sampleRateHz), Math.round(1.05 * sampleRateHz));
}

describe('the sound of a question', () => {
  test('is the ident on the tone of the question, and nothing before it', () => {
    const { samples, sampleRateHz } = questionSound(copy('TEN'), null);
    const dash = firstDash(copy('TEN'));
    expect(powerAt(dash, 1020, sampleRateHz) / meanSquare(dash)).toBeGreaterThan(0.99);
    expect(meanSquare(samples.subarray(0, Math.round(0.5 * sampleRateHz)))).toBe(0);
  });

  test('of a DME alone is on its own tone', () => {
    const dmeOnly = copy('TEN', { sent: { kind: 'dme-only', ident: 'TEN' }, toneHz: 1350 });
    const dash = firstDash(dmeOnly);
    expect(powerAt(dash, 1350, 16_000) / meanSquare(dash)).toBeGreaterThan(0.99);
  });

  test('of nothing is long enough to notice, silent without noise and noise alone with it', () => {
    const nothing = copy('TEN', { sent: { kind: 'nothing' } });
    const { samples, sampleRateHz, keyedEndS } = questionSound(nothing, null);
    expect(samples.length / sampleRateHz).toBeGreaterThanOrEqual(6);
    expect(keyedEndS).toBe(6);
    expect(meanSquare(samples)).toBe(0);
    expect(meanSquare(questionSound({ ...nothing, snrDb: 0 }, null).samples)).toBeGreaterThan(
      0.001,
    );
  });

  test.each([15, 6, 0, -6])(
    'with %d dB has the tone that much over the noise in 3 kHz',
    (snrDb) => {
      const question = copy('TTT', { snrDb });
      const { samples, sampleRateHz } = questionSound(question, null);
      const clean = questionSound(copy('TTT'), null).samples;
      // What is left after the tone, scaled as the whole was, is the noise: its quiet lead is noise alone.
      const lead = samples.subarray(0, Math.round(0.55 * sampleRateHz));
      const band = [];
      for (let hz = 300; hz < 3300; hz += 2) band.push(powerAt(lead, hz, sampleRateHz));
      // A bin of 0.55 s is 1.82 Hz wide; each sample of it every 2 Hz.
      const binHz = sampleRateHz / lead.length;
      const noise = (band.reduce((sum, each) => sum + each, 0) * 2) / binHz;
      const dash = firstDash(question);
      const tone = powerAt(dash, 1020, sampleRateHz);
      const measuredDb = 10 * Math.log10(tone / noise);
      expect(clean.length).toBe(samples.length);
      // Half a second of noise: its own power varies, and some of it lies on the tone.
      expect(Math.abs(measuredDb - snrDb)).toBeLessThan(2.5);
    },
  );

  test('is the same for the same question, and never clipped', () => {
    const question = copy('TEN', { snrDb: -12, seed: 77, isUneven: true });
    const { samples } = questionSound(question, null);
    expect(samples).toEqual(questionSound(question, null).samples);
    expect(samples.reduce((peak, each) => Math.max(peak, Math.abs(each)), 0)).toBeLessThanOrEqual(
      1,
    );
  });

  test('with a voice has the voice under it, and none where there is none at hand', () => {
    const question = copy('TEN', { voiceDb: 0 });
    const voice = Float32Array.from({ length: 200_000 }, (_, index) => Math.sin(index / 7));
    const lead = (sound: Float32Array): number => meanSquare(sound.subarray(0, 8000));
    expect(lead(questionSound(question, voice).samples)).toBeGreaterThan(0.01);
    expect(lead(questionSound(question, null).samples)).toBe(0);
  });
});
