import { quantile } from './order.ts';
import type { Frames } from './frames.ts';

/** Where the tone comes and goes, in frames with parts of a frame. */
export interface Edges {
  /** Where it rises above half its level, in order. */
  readonly ups: Float64Array;
  /** Where it falls below half its level, in order. */
  readonly downs: Float64Array;
}

/** Energy over noise that the mean of some frames must have before its rise and fall mean anything. */
const LEAST_RATIO = 14;

const SHORTEST_MEAN = 3;
const LONGEST_MEAN = 7;

/**
 * Rises and falls of the tone through half its level, from the mean of a few frames.
 *
 * The fainter the tone the more frames; null when even 70 ms are not enough: then marks have no edges
 * that could be measured one by one.
 */
export function edgesOf(frames: Frames, amplitude: Float64Array): Edges | null {
  const ratios = amplitude.map((a, n) => (a * a) / Math.max(frames.noise[n] ?? 0, 1e-30));
  const ratio = quantile(ratios, 0.5);
  const length = Math.max(SHORTEST_MEAN, Math.ceil(LEAST_RATIO / ratio) | 1);
  if (length > LONGEST_MEAN) return null;
  const size = smoothed(frames, length);
  const ups: number[] = [];
  const downs: number[] = [];
  for (let n = 0; n + 1 < frames.count; n += 1) {
    const limit = 0.5 * (amplitude[n] ?? 0);
    const here = (size[n] ?? 0) - limit;
    const next = (size[n + 1] ?? 0) - limit;
    // Frame n stands for its middle.
    if (here < 0 && next >= 0) ups.push(n + 0.5 + here / (here - next));
    if (here >= 0 && next < 0) downs.push(n + 0.5 + here / (here - next));
  }
  return { ups: Float64Array.from(ups), downs: Float64Array.from(downs) };
}

/** Magnitude of the mean phasor of `length` frames around each. */
function smoothed(frames: Frames, length: number): Float64Array {
  const half = length >> 1;
  const size = new Float64Array(frames.count);
  for (let n = 0; n < frames.count; n += 1) {
    let re = 0;
    let im = 0;
    for (let k = Math.max(0, n - half); k <= Math.min(frames.count - 1, n + half); k += 1) {
      re += frames.re[k] ?? 0;
      im += frames.im[k] ?? 0;
    }
    size[n] = Math.sqrt(re * re + im * im) / length;
  }
  return size;
}
