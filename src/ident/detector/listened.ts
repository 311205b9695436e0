import { noiseBeside } from './noise.ts';
import type { NoiseBeside } from './noise.ts';
import { spectrogramOf } from './spectrogram.ts';
import type { Spectrogram } from './spectrogram.ts';
import type { Stream } from './stream.ts';

/** A stretch of the stream with its two pictures over time and frequency. */
export interface Listened {
  readonly stream: Stream;
  /** Windows of 400 ms: fine in frequency. */
  readonly coarse: Spectrogram;
  /** Windows of 64 ms: fine in time. */
  readonly fine: Spectrogram;
  /** The noise beside a tone. */
  readonly besideAt: (offsetHz: number) => NoiseBeside;
}

/** Digital silence is taken for noise this far below the loudest of the stream (a power ratio). */
const LEAST_NOISE = 1e-6;

/** Prepares a stretch of stream for the search. */
export function listenedTo(stream: Stream): Listened {
  const coarse = spectrogramOf(stream, 0.4, 0.1, 512);
  const fine = spectrogramOf(stream, 0.064, 0.032, 64);
  let peak = 0;
  for (let n = 0; n < stream.re.length; n += 1) {
    peak = Math.max(peak, (stream.re[n] ?? 0) ** 2 + (stream.im[n] ?? 0) ** 2);
  }
  const least = Math.max(1e-20, LEAST_NOISE * peak);
  return { stream, coarse, fine, besideAt: (hz) => noiseBeside(coarse, fine, hz, least) };
}
