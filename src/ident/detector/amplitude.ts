import type { Frames } from './frames.ts';
import { quantile } from './order.ts';

/** Frames over which the level of a held tone is taken for a first guess: 100 ms. */
const HOLD_S = 0.1;

/** A first guess of the amplitude of the keyed tone: that of its loudest stretches, noise taken off. */
export function loudAmplitude(frames: Frames): number {
  const length = Math.max(1, Math.round(HOLD_S / frames.frameS));
  const windows = Math.max(0, frames.count - length + 1);
  const power = new Float64Array(windows);
  const noise = new Float64Array(windows);
  for (let from = 0; from < windows; from += 1) {
    let re = 0;
    let im = 0;
    let variance = 0;
    for (let n = from; n < from + length; n += 1) {
      re += frames.re[n] ?? 0;
      im += frames.im[n] ?? 0;
      variance += frames.noise[n] ?? 0;
    }
    power[from] = (re * re + im * im) / length ** 2;
    noise[from] = variance / length ** 2;
  }
  const loud = quantile(power, 0.95);
  const quiet = quantile(noise, 0.5);
  return Math.sqrt(Math.max(loud - quiet, 0.25 * loud, 1e-24));
}

/** A stretch of held tone, in frames. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** How level follows from the marks: they may be this far away to count, seconds. */
const NEAR_S = 1.2;

/**
 * The amplitude of the tone over time from the marks found, and how much it varies from mark to mark.
 *
 * Near a mark its own power counts, far from all the mean one. `spread`: standard deviation of the
 * marks' level (nepers, 0.12 is 1 dB) beyond what the noise explains.
 */
export function amplitudeFromMarks(
  frames: Frames,
  marks: readonly Stretch[],
): { readonly amplitude: Float64Array; readonly mean: number; readonly spread: number } {
  const seen = marks.flatMap((mark) => levelOf(frames, mark));
  const weightAll = seen.reduce((sum, each) => sum + each.weight, 0);
  const meanPower = seen.reduce((sum, each) => sum + each.weight * each.power, 0) / weightAll;
  if (!(meanPower > 0)) {
    const mean = loudAmplitude(frames);
    return { amplitude: new Float64Array(frames.count).fill(mean), mean, spread: 0 };
  }
  const excess = seen.map(({ power, noise }) => {
    const relative = power / meanPower;
    // Variance of |s + n|^2 about s^2: noise (2 s^2 + noise).
    const chance = (2 * meanPower * noise + noise * noise) / meanPower ** 2;
    return (relative - 1) ** 2 - chance;
  });
  const variance = excess.reduce((sum, each) => sum + each, 0) / Math.max(1, excess.length);
  const spread = Math.sqrt(Math.max(0, variance)) / 2;
  const amplitude = new Float64Array(frames.count);
  const near = NEAR_S / frames.frameS;
  // Where levels hardly vary, the mean of all marks is the better estimate.
  const trustMean = 0.02 / Math.max(1e-4, spread * spread);
  for (let n = 0; n < frames.count; n += 1) {
    let sum = 0;
    let weight = 0;
    for (const each of seen) {
      const share = each.weight * Math.exp(-(((n - each.middle) / near) ** 2));
      sum += share * each.power;
      weight += share;
    }
    const far = (trustMean * weightAll) / Math.max(1, seen.length);
    amplitude[n] = Math.sqrt((sum + far * meanPower) / (weight + far));
  }
  return { amplitude, mean: Math.sqrt(meanPower), spread };
}

function levelOf(
  frames: Frames,
  mark: Stretch,
): { middle: number; power: number; noise: number; weight: number }[] {
  const from = Math.max(0, Math.round(mark.from));
  const to = Math.min(frames.count, Math.round(mark.to));
  const length = to - from;
  if (length < 2 || length < 0.7 * (mark.to - mark.from)) return [];
  let re = 0;
  let im = 0;
  let variance = 0;
  for (let n = from; n < to; n += 1) {
    re += frames.re[n] ?? 0;
    im += frames.im[n] ?? 0;
    variance += frames.noise[n] ?? 0;
  }
  const noise = variance / length ** 2;
  const power = Math.max(0, (re * re + im * im) / length ** 2 - noise);
  return [{ middle: (from + to) / 2, power, noise, weight: length }];
}

/** Marks within this time share their level, seconds. */
const LOCAL_S = 1.6;

/** The amplitude of the loud stretches in each neighbourhood, not less than 0.4 of the loudest. */
export function localAmplitude(frames: Frames): Float64Array {
  const whole = loudAmplitude(frames);
  const hop = 10;
  const reach = Math.round(LOCAL_S / frames.frameS);
  const amplitude = new Float64Array(frames.count);
  for (let from = 0; from < frames.count; from += hop) {
    const first = Math.max(0, from - reach);
    const last = Math.min(frames.count, from + reach);
    const near = { ...frames, ...piece(frames, first, last) };
    const here = Math.min(whole * 1.2, Math.max(0.4 * whole, loudAmplitude(near)));
    amplitude.fill(here, from, from + hop);
  }
  return amplitude;
}

function piece(frames: Frames, from: number, to: number): Partial<Frames> {
  return {
    re: frames.re.subarray(from, to),
    im: frames.im.subarray(from, to),
    noise: frames.noise.subarray(from, to),
    count: to - from,
  };
}
