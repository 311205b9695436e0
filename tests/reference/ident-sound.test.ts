import { describe, expect, test } from 'vitest';
import { keyedSamples } from '../../src/ident/synthesis.ts';
import { identTimeline } from '../../src/ident/timeline.ts';
import { envelopeOf, lengthsAtHalfHeight } from './measured-sound.ts';

/** Twenty samples to a cycle of 1020 Hz, so that the envelope below has no ripple. */
const RATE_HZ = 20_400;

/** Power of the samples at one frequency (a DFT bin at any frequency, by direct summation). */
function powerAt(samples: Float32Array, frequencyHz: number, rateHz: number): number {
  const stepRad = (2 * Math.PI * frequencyHz) / rateHz;
  let inPhase = 0;
  let quadrature = 0;
  samples.forEach((sample, index) => {
    inPhase += sample * Math.cos(stepRad * index);
    quadrature += sample * Math.sin(stepRad * index);
  });
  return inPhase * inPhase + quadrature * quadrature;
}

function rendered(ident: string, wpm: number): Float32Array {
  return keyedSamples(identTimeline(ident, { wpm }), {
    sampleRateHz: RATE_HZ,
    leadS: 0.1,
    tailS: 0.1,
  });
}

describe('ITU-R M.1677-1: timing measured on the sound', () => {
  // QEV: --.- . ...-  Lengths in dots, on and off in turn, from the rule and the table of symbols.
  const UNITS = [3, 1, 3, 1, 1, 1, 3, 3, 1, 3, 1, 1, 1, 1, 1, 1, 3];

  test.each([5, 7, 10, 15])(
    'at %i words a minute each mark and gap is right to two per cent',
    (wpm) => {
      const lengths = lengthsAtHalfHeight(envelopeOf(rendered('QEV', wpm), 1020, RATE_HZ), RATE_HZ);
      expect(lengths).toHaveLength(UNITS.length);
      const unitS = 1.2 / wpm;
      lengths.forEach((lengthS, index) => {
        expect(Math.abs(lengthS / ((UNITS[index] ?? 0) * unitS) - 1)).toBeLessThan(0.02);
      });
    },
  );
});

describe('AIM 1-1-7 f: a VOR identifies itself with 1020 Hz', () => {
  test.each([1020, 1350])('a tone of %i Hz is strongest within 1 Hz of it', (toneHz) => {
    const marks = identTimeline('T', { wpm: 4 }); // one dash of 0.9 s
    const samples = keyedSamples(marks, { toneHz, sampleRateHz: RATE_HZ });
    let best = { frequencyHz: 0, power: 0 };
    for (let frequencyHz = toneHz - 20; frequencyHz <= toneHz + 20; frequencyHz += 0.1) {
      const power = powerAt(samples, frequencyHz, RATE_HZ);
      if (power > best.power) best = { frequencyHz, power };
    }
    expect(Math.abs(best.frequencyHz - toneHz)).toBeLessThan(1);
  });
});

describe('the tone does not click', () => {
  /** Share of the energy farther than 200 Hz from the tone, dB, over all bins of a full DFT. */
  function outsideDb(samples: Float32Array, toneHz: number, rateHz: number): number {
    const binHz = rateHz / samples.length;
    let near = 0;
    let total = 0;
    for (const sample of samples) total += sample * sample;
    for (let bin = 0; bin * binHz < rateHz / 2; bin += 1) {
      if (Math.abs(bin * binHz - toneHz) > 200) continue;
      near += (2 * powerAt(samples, bin * binHz, rateHz)) / samples.length;
    }
    // Parseval: what is not near is outside.
    return 10 * Math.log10(Math.max(1e-12, total - near) / total);
  }

  test.each([
    ['E', 20, 8000],
    ['E', 5, 8000],
    ['E', 7, 16_000],
    ['I', 10, 8000],
    ['A', 15, 8000],
  ])('%s at %i words a minute keeps all but -50 dB within 200 Hz', (ident, wpm, rateHz) => {
    const tone = { sampleRateHz: rateHz, leadS: 0.05, tailS: 0.05 };
    const samples = keyedSamples(identTimeline(ident, { wpm }), tone);
    expect(outsideDb(samples, 1020, rateHz)).toBeLessThan(-50);
  });

  test('the check itself finds a hard-keyed tone clicking', () => {
    const hard = Float32Array.from({ length: 1600 }, (_, index) =>
      index > 400 && index < 1200 ? Math.sin((2 * Math.PI * 1020 * index) / 8000) : 0,
    );
    expect(outsideDb(hard, 1020, 8000)).toBeGreaterThan(-40);
  });

  test('the sound begins and ends in silence even without quiet around it', () => {
    const samples = keyedSamples(identTimeline('E'), { sampleRateHz: 48_000, leadS: 0, tailS: 0 });
    expect(Math.abs(samples[0] ?? 1)).toBeLessThan(1e-3);
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(1e-3);
  });

  test('unless asked otherwise there is a second of quiet at both ends', () => {
    const samples = keyedSamples(identTimeline('E'), { sampleRateHz: 8000 });
    expect(samples.slice(0, 8000).every((each) => each === 0)).toBe(true);
    expect(samples.slice(-8000).every((each) => each === 0)).toBe(true);
  });

  test('the tone never exceeds its amplitude', () => {
    const samples = keyedSamples(identTimeline('QEV'), { amplitude: 0.5 });
    const loudest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(loudest).toBeLessThanOrEqual(0.5);
    expect(loudest).toBeGreaterThan(0.49);
  });
});
