import { lnI0 } from './bessel.ts';
import type { Frames } from './frames.ts';

/**
 * Running sums from which the evidence for a mark anywhere follows in one step.
 *
 * `re`, `im`: sum of a z / v; `weight`: sum of a^2 / v, each up to the start of the frame.
 */
export interface MarkSums {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly weight: Float64Array;
  readonly count: number;
}

/** The most that one second of tone may count, as energy over noise: keeps the model honest. */
const MOST_PER_S = 250;

/**
 * The sums for a tone of amplitude `scale` x `amplitude[frame]`.
 *
 * Where the tone stands high above the noise, the noise is taken for louder than it is (no more than
 * 800 of energy over noise a second): timing and level are never exact enough to earn more. A frame
 * far above the tone (a click, a voice) is cut down to it.
 */
export function markSums(frames: Frames, amplitude: Float64Array, scale: number): MarkSums {
  const { count, frameS } = frames;
  const re = new Float64Array(count + 1);
  const im = new Float64Array(count + 1);
  const weight = new Float64Array(count + 1);
  for (let n = 0; n < count; n += 1) {
    const full = amplitude[n] ?? 0;
    // The same noise whatever the scale, so that evidence at one level compares with that at another.
    const v = Math.max(frames.noise[n] ?? 0, (full * full) / (MOST_PER_S * frameS), 1e-30);
    const x = frames.re[n] ?? 0;
    const y = frames.im[n] ?? 0;
    const most = 1.4 * full + 1.75 * Math.sqrt(v);
    const a = scale * full;
    const size = Math.sqrt(x * x + y * y);
    const gain = (a / v) * (size > most ? most / size : 1);
    re[n + 1] = (re[n] ?? 0) + gain * x;
    im[n + 1] = (im[n] ?? 0) + gain * y;
    weight[n + 1] = (weight[n] ?? 0) + (a * a) / v;
  }
  return { re, im, weight, count };
}

/**
 * The evidence for one mark from `from` to `to` (in frames, parts of a frame too) against no tone there:
 * ln I0(2 |X|) - W, nats. What lies outside the recording counts nothing.
 *
 * *Source:* detection of a tone of known level and unknown phase in white noise (Van Trees, Detection,
 * Estimation, and Modulation Theory I, section 4.4; from memory).
 */
export function markEvidence(sums: MarkSums, from: number, to: number): number {
  const a = Math.min(sums.count, Math.max(0, from));
  const b = Math.min(sums.count, Math.max(0, to));
  if (b <= a) return 0;
  const lowA = a | 0;
  const lowB = b | 0;
  const partA = a - lowA;
  const partB = b - lowB;
  const re = at(sums.re, lowB, partB) - at(sums.re, lowA, partA);
  const im = at(sums.im, lowB, partB) - at(sums.im, lowA, partA);
  const weight = at(sums.weight, lowB, partB) - at(sums.weight, lowA, partA);
  return lnI0(2 * Math.sqrt(re * re + im * im)) - weight;
}

function at(sums: Float64Array, below: number, part: number): number {
  const low = sums[below] ?? 0;
  return part === 0 ? low : low + part * ((sums[below + 1] ?? low) - low);
}
