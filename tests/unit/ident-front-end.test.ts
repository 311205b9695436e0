import { describe, expect, it } from 'vitest';
import { lnI0 } from '../../src/ident/detector/bessel.ts';
import { fftOf, transform } from '../../src/ident/detector/fft.ts';
import { frontEndStep, startFrontEnd } from '../../src/ident/front-end.ts';

/** Magnitudes that the front end gives for a sine of amplitude 1, once its filter is full. */
function answerTo(toneHz: number, sampleRateHz: number): number[] {
  const state = startFrontEnd(sampleRateHz);
  const samples = Float32Array.from({ length: sampleRateHz / 4 }, (_, n) =>
    Math.sin((2 * Math.PI * toneHz * n) / sampleRateHz),
  );
  const out = new Float64Array(2 * samples.length);
  const count = frontEndStep(state, samples, out);
  return Array.from({ length: count - 60 }, (_, n) =>
    Math.hypot(out[2 * (n + 60)] ?? 0, out[2 * (n + 60) + 1] ?? 0),
  );
}

describe('the front end', () => {
  it.each([8000, 22_050, 44_100, 48_000, 96_000])(
    'passes the tones of VOR and DME as they are, at %i samples a second',
    (rateHz) => {
      for (const toneHz of [960, 1020, 1080, 1300, 1350, 1400]) {
        for (const size of answerTo(toneHz, rateHz)) expect(Math.abs(size - 1)).toBeLessThan(0.01);
      }
    },
  );

  it.each([100, 400, 2100, 3000])('holds back %i Hz by 50 dB', (toneHz) => {
    for (const size of answerTo(toneHz, 8000)) expect(size).toBeLessThan(10 ** -2.5);
  });

  it('gives the same whether the sound comes in quanta of 128 or all at once', () => {
    const samples = Float32Array.from({ length: 4800 }, (_, n) => Math.sin(n * n));
    const whole = new Float64Array(400);
    const count = frontEndStep(startFrontEnd(48_000), samples, whole);
    const state = startFrontEnd(48_000);
    const quantum = new Float64Array(16);
    const pieces: number[] = [];
    for (let from = 0; from < samples.length; from += 128) {
      const some = frontEndStep(state, samples.subarray(from, from + 128), quantum);
      pieces.push(...quantum.subarray(0, 2 * some));
    }
    expect(pieces).toEqual(Array.from(whole.subarray(0, 2 * count)));
  });

  it('takes a sample that is not a number for silence', () => {
    const out = new Float64Array(8);
    frontEndStep(startFrontEnd(8000), new Float32Array(8).fill(Number.NaN), out);
    expect(Array.from(out)).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
  });
});

describe('ln I0 (Abramowitz and Stegun, table 9.8, from memory)', () => {
  it.each([
    [0, 1],
    [1, 1.2660658778],
    [5, 27.239871824],
    [10, 2815.716628],
  ])('at %f is that of the table', (x, i0) => {
    expect(Math.abs(lnI0(x) - Math.log(i0))).toBeLessThan(2e-4);
  });

  it('has no step where the table ends', () => {
    expect(lnI0(64.001) - lnI0(63.999)).toBeCloseTo(0.002, 4);
  });
});

describe('the fast Fourier transform', () => {
  it('gives what the sum gives', () => {
    const size = 16;
    const re = Float64Array.from({ length: size }, (_, n) => Math.sin(n * n));
    const im = Float64Array.from({ length: size }, (_, n) => Math.cos(3 * n));
    const sums = Array.from({ length: size }, (_, k) => {
      let x = 0;
      let y = 0;
      for (let n = 0; n < size; n += 1) {
        const turn = (-2 * Math.PI * k * n) / size;
        x += (re[n] ?? 0) * Math.cos(turn) - (im[n] ?? 0) * Math.sin(turn);
        y += (re[n] ?? 0) * Math.sin(turn) + (im[n] ?? 0) * Math.cos(turn);
      }
      return { x, y };
    });
    transform(fftOf(size), re, im);
    for (const [k, { x, y }] of sums.entries()) {
      expect(re[k]).toBeCloseTo(x, 10);
      expect(im[k]).toBeCloseTo(y, 10);
    }
  });
});
