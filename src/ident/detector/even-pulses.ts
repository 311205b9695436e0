import { edgesOf } from './edges.ts';
import { quantile } from './order.ts';
import type { ToneReading } from './tone-reading.ts';

/** So many marks in a row that are alike are no letters: none has more than four. */
const LEAST_PULSES = 7;

/** Longest time from one to the next, seconds: a short ident that repeats is farther apart. */
const LONGEST_PERIOD_S = 3;

/** Shorter ones are noise, seconds. */
const SHORTEST_S = 0.03;

/** How many must be like the usual one, and how far they may stray, as a share and in frames. */
const LEAST_SHARE = 0.9;
const STRAY = { period: 0.07, length: 0.15, frames: 1.5 } as const;

/** Whether nothing but marks of one length at one pace is keyed at a tone, as a test signal does. */
export function isEvenlyPulsed({ frames, meanAmplitude }: ToneReading): boolean {
  const edges = edgesOf(frames, new Float64Array(frames.count).fill(meanAmplitude));
  if (edges === null) return false;
  const { downs } = edges;
  const shortest = SHORTEST_S / frames.frameS;
  const marks = Array.from(edges.ups, (from) => ({
    from,
    length: (downs.find((down) => down > from) ?? Infinity) - from,
  })).filter(({ length }) => length >= shortest && length < Infinity);
  if (marks.length < LEAST_PULSES) return false;
  const steps = marks.slice(1).map(({ from }, n) => from - (marks[n]?.from ?? from));
  const period = quantile(Float64Array.from(steps), 0.5);
  if (period * frames.frameS > LONGEST_PERIOD_S) return false;
  const lengths = marks.map(({ length }) => length);
  return areAlike(steps, STRAY.period) && areAlike(lengths, STRAY.length);
}

function areAlike(values: readonly number[], stray: number): boolean {
  const usual = quantile(Float64Array.from(values), 0.5);
  const near = values.filter((each) => Math.abs(each - usual) <= stray * usual + STRAY.frames);
  return near.length >= LEAST_SHARE * values.length;
}
