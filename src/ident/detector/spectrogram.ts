import { fftOf, transform } from './fft.ts';
import type { Stream } from './stream.ts';

/** Power over time and frequency: `power[time * bins + bin]`. */
export interface Spectrogram {
  readonly power: Float64Array;
  readonly times: number;
  readonly bins: number;
  /** Frequency of a bin relative to the stream's centre is `(bin - bins / 2) * binHz`. */
  readonly binHz: number;
  readonly hopS: number;
  /** Sum of the squared window: white noise of variance s2 a sample has a mean power of s2 x this. */
  readonly noiseGain: number;
}

/**
 * Power of the stream in windows of `windowS` every `hopS`, Hann windowed, padded to `bins` points.
 *
 * The first window is centred half a window after the start. A stream shorter than one window gives
 * no times.
 */
export function spectrogramOf(
  stream: Stream,
  windowS: number,
  hopS: number,
  bins: number,
): Spectrogram {
  const length = Math.min(bins, Math.round(windowS * stream.rateHz));
  const hop = Math.max(1, Math.round(hopS * stream.rateHz));
  const window = hann(length);
  const noiseGain = window.reduce((sum, w) => sum + w * w, 0);
  const times = Math.max(0, Math.floor((stream.re.length - length) / hop) + 1);
  const power = new Float64Array(times * bins);
  const fft = fftOf(bins);
  const re = new Float64Array(bins);
  const im = new Float64Array(bins);
  for (let time = 0; time < times; time += 1) {
    re.fill(0);
    im.fill(0);
    for (let n = 0; n < length; n += 1) {
      const w = window[n] ?? 0;
      re[n] = w * (stream.re[time * hop + n] ?? 0);
      im[n] = w * (stream.im[time * hop + n] ?? 0);
    }
    transform(fft, re, im);
    for (let bin = 0; bin < bins; bin += 1) {
      const from = (bin + bins / 2) % bins;
      power[time * bins + bin] = (re[from] ?? 0) ** 2 + (im[from] ?? 0) ** 2;
    }
  }
  return { power, times, bins, binHz: stream.rateHz / bins, hopS: hop / stream.rateHz, noiseGain };
}

function hann(length: number): Float64Array {
  const window = new Float64Array(length);
  for (let n = 0; n < length; n += 1) {
    window[n] = 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / length);
  }
  return window;
}
