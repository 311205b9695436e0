import { CENTRE_HZ } from '../front-end.ts';
import { quantile } from './order.ts';
import type { Spectrogram } from './spectrogram.ts';

/** Where a VOR and a DME put their idents, with room for a transmitter that is off tune. */
const TONE_BANDS = [
  { name: 'vor', leastHz: 960, mostHz: 1080 },
  { name: 'dme', leastHz: 1300, mostHz: 1400 },
] as const;

/** The band in which a tone lies, with some room; null: neither a VOR nor a DME sends there. */
export function bandOf(hz: number, roomHz: number): 'vor' | 'dme' | null {
  const own = TONE_BANDS.find(
    ({ leastHz, mostHz }) => hz >= leastHz - roomHz && hz <= mostHz + roomHz,
  );
  return own?.name ?? null;
}

/** A tone that may be keyed. */
export interface ToneFound {
  readonly band: 'vor' | 'dme';
  /** From the stream's centre. */
  readonly offsetHz: number;
  /** How much it looks keyed, nats. */
  readonly score: number;
}

/** Two tones nearer than this are taken for one. */
const APART_HZ = 9;

/** Tone over noise in one window that the score reckons with: weak, middling, strong. */
const RATIOS = [4, 12, 40] as const;

/** Of exponentially distributed power, the share of the mean below which 25 % lies: -ln 0.75. */
const QUANTILE_25 = -Math.log(0.75);

/**
 * The tones of the two bands that are most likely keyed, at most `most` in each.
 *
 * `grid`: power in windows of 400 ms. A window holds the tone a quarter of the time:
 * S = sum over time of ln(0.75 + 0.25 / (1 + r) exp(q r / (1 + r))), q power over noise, r the expected
 * ratio, the best of three r. S stops growing where the tone is strong, so the frequency comes from the
 * mean power; and the strongest line of each band is always among the candidates.
 */
export function tonesIn(grid: Spectrogram, most: number): ToneFound[] {
  if (grid.times === 0) return [];
  const floor = floors(grid);
  const loudness = frameFactors(grid, floor);
  return TONE_BANDS.flatMap((band) => {
    const first = binOf(grid, band.leastHz);
    const last = binOf(grid, band.mostHz);
    const scores = new Float64Array(grid.bins);
    const power = new Float64Array(grid.bins);
    for (let bin = first - 1; bin <= last + 1; bin += 1) {
      scores[bin] = keyedScore(grid, bin, floor[bin] ?? 1, loudness);
      power[bin] = meanPower(grid, bin);
    }
    const picked: ToneFound[] = [];
    const take = (bin: number) => {
      const top = climb(power, bin, first, last);
      const offsetHz = (top + parabola(power, top) - grid.bins / 2) * grid.binHz;
      const isNew = picked.every((other) => Math.abs(other.offsetHz - offsetHz) >= APART_HZ);
      if (isNew) picked.push({ band: band.name, offsetHz, score: scores[top] ?? 0 });
    };
    take(greatest(power, first, last));
    const order = Array.from({ length: last - first + 1 }, (_, n) => first + n);
    order.sort((a, b) => (scores[b] ?? 0) - (scores[a] ?? 0));
    for (const bin of order.slice(0, 24)) if (picked.length < most) take(bin);
    return picked;
  });
}

function binOf(grid: Spectrogram, hz: number): number {
  return Math.round((hz - CENTRE_HZ) / grid.binHz) + grid.bins / 2;
}

function keyedScore(grid: Spectrogram, bin: number, floor: number, loudness: Float64Array): number {
  let best = -Infinity;
  for (const ratio of RATIOS) {
    const share = ratio / (1 + ratio);
    let sum = 0;
    for (let time = 0; time < grid.times; time += 1) {
      const q = (grid.power[time * grid.bins + bin] ?? 0) / (floor * (loudness[time] ?? 1));
      sum += Math.log(0.75 + (0.25 / (1 + ratio)) * Math.exp(Math.min(15, q * share)));
    }
    best = Math.max(best, sum);
  }
  return best;
}

/** Noise power of each bin: the usual one of its neighbours, not less than nearly its own quiet. */
function floors(grid: Spectrogram): Float64Array {
  const own = new Float64Array(grid.bins);
  const overTime = new Float64Array(grid.times);
  let peak = 0;
  for (let bin = 0; bin < grid.bins; bin += 1) {
    for (let time = 0; time < grid.times; time += 1) {
      const power = grid.power[time * grid.bins + bin] ?? 0;
      overTime[time] = power;
      peak = Math.max(peak, power);
    }
    own[bin] = quantile(overTime, 0.25) / QUANTILE_25;
  }
  return own.map((here, bin) => {
    const near = own.subarray(Math.max(0, bin - 26), bin + 27);
    return Math.max(quantile(near, 0.5), 0.8 * here, 1e-6 * peak, 1e-30);
  });
}

/** How much louder than usual the whole band is, window by window: at least one half. */
function frameFactors(grid: Spectrogram, floor: Float64Array): Float64Array {
  const ratios = new Float64Array(grid.bins);
  return Float64Array.from({ length: grid.times }, (_, time) => {
    for (let bin = 0; bin < grid.bins; bin += 1) {
      ratios[bin] = (grid.power[time * grid.bins + bin] ?? 0) / (floor[bin] ?? 1);
    }
    return Math.max(0.5, quantile(ratios, 0.5) / Math.LN2);
  });
}

function meanPower(grid: Spectrogram, bin: number): number {
  let sum = 0;
  for (let time = 0; time < grid.times; time += 1) sum += grid.power[time * grid.bins + bin] ?? 0;
  return sum / Math.max(1, grid.times);
}

function greatest(values: Float64Array, first: number, last: number): number {
  let best = first;
  for (let n = first; n <= last; n += 1) if ((values[n] ?? 0) > (values[best] ?? 0)) best = n;
  return best;
}

/** Uphill to the nearest top. */
function climb(values: Float64Array, from: number, first: number, last: number): number {
  let at = from;
  for (;;) {
    const here = values[at] ?? 0;
    if (at < last && (values[at + 1] ?? 0) > here) at += 1;
    else if (at > first && (values[at - 1] ?? 0) > here) at -= 1;
    else return at;
  }
}

/** Where the top of the parabola through three log powers lies, -0.5 to 0.5 from the middle one. */
function parabola(power: Float64Array, top: number): number {
  const [low, mid, high] = [-1, 0, 1].map((step) => Math.log((power[top + step] ?? 0) + 1e-300));
  if (low === undefined || mid === undefined || high === undefined) return 0;
  const bend = low - 2 * mid + high;
  return bend < 0 ? Math.min(0.5, Math.max(-0.5, (0.5 * (low - high)) / bend)) : 0;
}
