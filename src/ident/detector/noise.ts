import { quantile } from './order.ts';
import type { Spectrogram } from './spectrogram.ts';

/** How loud the noise is beside a tone, over time. */
export interface NoiseBeside {
  /** Variance of one complex sample of the stream, if the noise were as at the tone everywhere. */
  readonly variance: number;
  /** The same relative to `variance`, window by window of the fine spectrogram. */
  readonly factor: Float64Array;
  readonly hopS: number;
}

/** Of exponentially distributed power, the share of the mean below which 40 % lies: -ln 0.6. */
const QUANTILE_40 = -Math.log(0.6);
const QUANTILE_60 = -Math.log(0.4);

/** Beside the tone: far enough not to hold its keying, near enough to share its noise. */
const NEAREST_HZ = 50;
const FARTHEST_HZ = 230;

/** The noise may be this much quieter than usual in places; less is not believed. */
const LEAST_FACTOR = 0.5;

/**
 * The noise at a tone, from what lies 50 to 230 Hz beside it.
 *
 * `coarse`: long windows, for the level that holds all the time; `fine`: short ones (64 ms), for speech
 * and other noise that comes and goes. `offsetHz`: the tone, from the stream's centre. `leastVariance`:
 * what the noise is at least, for sound with digital silence between the marks.
 */
export function noiseBeside(
  coarse: Spectrogram,
  fine: Spectrogram,
  offsetHz: number,
  leastVariance: number,
): NoiseBeside {
  const floors = binFloors(coarse, offsetHz, 0.4, QUANTILE_40);
  const level = quantile(Float64Array.from(floors.values()), 0.5) / coarse.noiseGain;
  const variance = Math.max(level, leastVariance);
  const own = binFloors(fine, offsetHz, 0.6, QUANTILE_60);
  const raw = new Float64Array(fine.times);
  const least = leastVariance * fine.noiseGain;
  for (let time = 0; time < fine.times; time += 1) {
    let sum = 0;
    for (const [bin, floor] of own) {
      sum += (fine.power[time * fine.bins + bin] ?? 0) / Math.max(floor, least);
    }
    raw[time] = sum / Math.max(1, own.size);
  }
  const factor = raw.map((here, time) => {
    const smooth = ((raw[time - 1] ?? here) + 2 * here + (raw[time + 1] ?? here)) / 4;
    return Math.max(LEAST_FACTOR, smooth);
  });
  return { variance, factor, hopS: fine.hopS };
}

/** The usual power of each bin beside the tone. */
function binFloors(
  grid: Spectrogram,
  offsetHz: number,
  share: number,
  ofMean: number,
): ReadonlyMap<number, number> {
  const floors = new Map<number, number>();
  const overTime = new Float64Array(grid.times);
  for (let bin = 0; bin < grid.bins; bin += 1) {
    const awayHz = Math.abs((bin - grid.bins / 2) * grid.binHz - offsetHz);
    if (awayHz < NEAREST_HZ || awayHz > FARTHEST_HZ) continue;
    for (let time = 0; time < grid.times; time += 1) {
      overTime[time] = grid.power[time * grid.bins + bin] ?? 0;
    }
    floors.set(bin, quantile(overTime, share) / ofMean);
  }
  return floors;
}
