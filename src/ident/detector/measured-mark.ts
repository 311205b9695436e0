import type { Stretch } from './amplitude.ts';
import type { Frames } from './frames.ts';

/** Shortest and longest that something may be. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}

/** A mark as it was heard. */
export interface MeasuredMark {
  /** Frames. */
  readonly from: number;
  readonly to: number;
  /** Whether it is one mark without a hole, of a length within its bounds. */
  readonly isOne: boolean;
  readonly level: number;
  /** Its energy over the noise in a frame. */
  readonly ratio: number;
}

/** Energy over noise in one frame that is believed at most: edges are blurred by the front end. */
const MOST_PER_FRAME = 6;

/** Evidence from which a mark is too long or too short, and from which there is a hole in it, nats. */
const MISFIT = 10;
const HOLE = 15;

/** Under this energy over noise in a frame a mark cannot be measured: about -13 dB in 3 kHz. */
const MEASURABLE = 1.5;

/** Where the noise rises to so many times the usual, as under a voice, it takes so many times as much. */
const UNSTEADY = 4;
const UNSTEADY_FACTOR = 8;

/** The tone is on above this share of the mark's level: less than half, because it may fade meanwhile. */
const TURN = 0.4;

/** The level of a mark is that of its loudest part of this length, seconds: a hole must not lower it. */
const PART_S = 0.08;

/**
 * A mark measured between rise and fall: the stretch of a window in which the tone is on.
 *
 * `mark`: where it should be; `bounds`: of its length, frames; `usualNoise`: of a frame. The evidence for the tone in a frame is
 * 2 a x - 0.8 a^2 over the noise, x along the mark's own phase, so that it turns at 0.4 of the level.
 */
export function measuredMark(
  frames: Frames,
  window: Stretch,
  mark: Stretch,
  bounds: Bounds,
  usualNoise: number,
): MeasuredMark {
  const isUnsteady = loudestNoise(frames, window) > UNSTEADY * usualNoise;
  const factor = isUnsteady ? UNSTEADY_FACTOR : 1;
  const { sums, level, ratio } = onSums(frames, window, mark);
  const { any, within, from: anyFrom, to: anyTo } = likeliestSpan(sums, bounds);
  const hole = deepestHole(sums, anyFrom, anyTo);
  const isFit = any - within <= factor * MISFIT && hole <= factor * HOLE;
  const isOne = isFit || ratio < MEASURABLE;
  const span = { from: window.from + anyFrom, to: window.from + anyTo };
  return { ...span, isOne, level: isUnsteady ? Infinity : level, ratio: ratio / factor ** 2 };
}

/** The stretch with most evidence, and the most that one of a length within bounds has. */
function likeliestSpan(
  sums: Float64Array,
  { least, most }: Bounds,
): { readonly any: number; readonly within: number; readonly from: number; readonly to: number } {
  let best = { any: -Infinity, from: 0, to: 0 };
  let within = -Infinity;
  for (let from = 0; from < sums.length; from += 1) {
    for (let to = from + 1; to < sums.length; to += 1) {
      const any = (sums[to] ?? 0) - (sums[from] ?? 0);
      if (any > within && to - from >= least && to - from <= most) within = any;
      if (any > best.any) best = { any, from, to };
    }
  }
  return { ...best, within };
}

function loudestNoise(frames: Frames, window: Stretch): number {
  let most = 0;
  for (let n = window.from; n < window.to; n += 1) most = Math.max(most, frames.noise[n] ?? 0);
  return most;
}

/** Running sums of the evidence, frame by frame, that the tone is on. */
function onSums(
  frames: Frames,
  window: Stretch,
  mark: Stretch,
): { readonly sums: Float64Array; readonly level: number; readonly ratio: number } {
  const from = Math.max(0, Math.round(mark.from));
  const to = Math.min(frames.count, Math.round(mark.to));
  const whole = phasorOf(frames, from, to);
  const part = Math.min(to - from, Math.max(2, Math.round(PART_S / frames.frameS)));
  let a = 1e-12;
  for (let n = from; n + part <= to; n += 1) {
    a = Math.max(a, phasorOf(frames, n, n + part).size);
  }
  const sums = new Float64Array(window.to - window.from + 1);
  let noise = 0;
  for (let n = window.from; n < window.to; n += 1) {
    noise += frames.noise[n] ?? 0;
    const v = Math.max(frames.noise[n] ?? 0, (a * a) / MOST_PER_FRAME);
    const along = (frames.re[n] ?? 0) * whole.cos + (frames.im[n] ?? 0) * whole.sin;
    const x = Math.max(-a, Math.min(1.4 * a, along));
    const at = n - window.from;
    sums[at + 1] = (sums[at] ?? 0) + (2 * a * x - 2 * TURN * a * a) / v;
  }
  const ratio = (whole.size ** 2 * (window.to - window.from)) / Math.max(noise, 1e-30);
  return { sums, level: a, ratio };
}

/** The mean phasor of some frames: its direction and its length. */
function phasorOf(
  frames: Frames,
  from: number,
  to: number,
): { readonly cos: number; readonly sin: number; readonly size: number } {
  let re = 0;
  let im = 0;
  for (let n = from; n < to; n += 1) {
    re += frames.re[n] ?? 0;
    im += frames.im[n] ?? 0;
  }
  const sum = Math.sqrt(re * re + im * im);
  if (sum === 0) return { cos: 1, sin: 0, size: 0 };
  return { cos: re / sum, sin: im / sum, size: sum / Math.max(1, to - from) };
}

/** The most evidence against the tone in any stretch between two places. */
function deepestHole(sums: Float64Array, from: number, to: number): number {
  let top = sums[from] ?? 0;
  let deepest = 0;
  for (let n = from; n <= to; n += 1) {
    const here = sums[n] ?? 0;
    top = Math.max(top, here);
    deepest = Math.max(deepest, top - here);
  }
  return deepest;
}
