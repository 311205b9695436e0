import { CENTRE_HZ } from '../front-end.ts';
import { quantile } from './order.ts';
import type { Spectrogram } from './spectrogram.ts';
import { bandOf } from './tone-search.ts';

/** One tone that holds a large part of all that is heard. */
export interface LoudestLine {
  readonly hz: number;
  /** Whether it never stops. */
  readonly isSteady: boolean;
  /** Whether it lies where a VOR or a DME puts its ident. */
  readonly isInBand: boolean;
}

/** A tone in windows of 400 ms spreads over so many bins on either side. */
const SPREAD_BINS = 3;

/** The share of all power from which one tone is what is heard. */
const LEAST_SHARE = 0.35;

/** A tone off the bands by less is not called so, Hz: its keying makes it that wide. */
const EDGE_HZ = 4;

/** The tone that stands out of everything else from 700 to 1670 Hz; null when none does. */
export function loudestLine(grid: Spectrogram): LoudestLine | null {
  if (grid.times === 0) return null;
  const mean = Float64Array.from({ length: grid.bins }, (_, bin) => {
    let sum = 0;
    for (let time = 0; time < grid.times; time += 1) sum += powerAt(grid, time, bin);
    return sum / grid.times;
  });
  const top = mean.reduce((best, power, bin) => (power > (mean[best] ?? 0) ? bin : best), 0);
  const near = (bin: number) => Math.abs(bin - top) <= SPREAD_BINS;
  const total = mean.reduce((sum, power) => sum + power, 0);
  const own = mean.reduce((sum, power, bin) => sum + (near(bin) ? power : 0), 0);
  if (total <= 0 || own < LEAST_SHARE * total) return null;
  const overTime = Float64Array.from({ length: grid.times }, (_, time) => powerAt(grid, time, top));
  const hz = CENTRE_HZ + (top - grid.bins / 2) * grid.binHz;
  return {
    hz,
    isSteady: quantile(overTime, 0.1) > 0.4 * (mean[top] ?? 0),
    isInBand: bandOf(hz, EDGE_HZ) !== null,
  };
}

function powerAt(grid: Spectrogram, time: number, bin: number): number {
  return grid.power[time * grid.bins + bin] ?? 0;
}
