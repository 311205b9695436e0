import { quantile } from './order.ts';

/** A first, quick idea of what is keyed at one tone, sample by sample. Its fields change in place. */
export interface Tracker {
  readonly rateHz: number;
  /** Samples in one step of 20 ms. */
  readonly step: number;
  offsetHz: number;
  /** Phasor sums of the last three steps and of the one under way. */
  readonly sums: Float64Array;
  filled: number;
  steps: number;
  /** Levels of the last ten seconds, round and round. */
  readonly levels: Float64Array;
  peak: number;
  floor: number;
  level: number;
  /** Start of the mark under way, steps; -1 while it is quiet. */
  onSince: number;
  /** End of the last mark, steps; -1 before there is one. */
  lastEnd: number;
  /** Marks since they were last taken away: start and end, seconds. */
  readonly marks: { readonly startS: number; readonly endS: number }[];
}

const STEP_S = 0.02;
const MEMORY_STEPS = 500;
const SPAN = 3;

/** A blip shorter than this is no mark, seconds. */
const SHORTEST_S = 0.05;

/** Tracks a tone `offsetHz` from the stream's centre. */
export function startTracker(rateHz: number, offsetHz: number): Tracker {
  return {
    rateHz,
    step: Math.round(STEP_S * rateHz),
    offsetHz,
    sums: new Float64Array(2 * (SPAN + 1)),
    filled: 0,
    steps: 0,
    levels: new Float64Array(MEMORY_STEPS),
    peak: 0,
    floor: 0,
    level: 0,
    onSince: -1,
    lastEnd: -1,
    marks: [],
  };
}

/** Takes in one complex sample, the `index`-th since listening began. */
export function track(tracker: Tracker, re: number, im: number, index: number): void {
  const { sums } = tracker;
  const turn = (-2 * Math.PI * tracker.offsetHz * index) / tracker.rateHz;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  sums[0] = (sums[0] ?? 0) + re * cos - im * sin;
  sums[1] = (sums[1] ?? 0) + re * sin + im * cos;
  tracker.filled += 1;
  if (tracker.filled === tracker.step) stepOn(tracker);
}

/** Seconds since the last mark ended; null while one is keyed or before the first. */
export function quietS(tracker: Tracker): number | null {
  if (tracker.onSince >= 0 || tracker.lastEnd < 0) return null;
  return (tracker.steps - tracker.lastEnd) * stepS(tracker);
}

function stepS({ step, rateHz }: Tracker): number {
  return step / rateHz;
}

function stepOn(tracker: Tracker): void {
  const { sums, levels } = tracker;
  let re = 0;
  let im = 0;
  for (let n = 0; n < SPAN; n += 1) {
    re += sums[2 * n] ?? 0;
    im += sums[2 * n + 1] ?? 0;
  }
  sums.copyWithin(2, 0, 2 * SPAN);
  sums.fill(0, 0, 2);
  tracker.filled = 0;
  tracker.steps += 1;
  tracker.level = Math.sqrt(re * re + im * im) / (SPAN * tracker.step);
  levels[tracker.steps % MEMORY_STEPS] = tracker.level;
  if (tracker.steps % 5 === 0) {
    const known = levels.subarray(0, Math.min(MEMORY_STEPS, tracker.steps + 1));
    tracker.peak = quantile(known, 0.9);
    tracker.floor = quantile(known, 0.3);
  }
  mark(tracker);
}

/** Begins or ends a mark when the level passes half of what it usually reaches. */
function mark(tracker: Tracker): void {
  const { peak, floor, level, steps } = tracker;
  const isOn = peak > 2 * floor && level > 0.5 * (peak + floor);
  if (isOn && tracker.onSince < 0) tracker.onSince = steps;
  if (isOn || tracker.onSince < 0) return;
  const length = stepS(tracker);
  if ((steps - tracker.onSince) * length >= SHORTEST_S) {
    // The level is that of the last three steps: their middle lies 1.5 steps back.
    const startS = (tracker.onSince - SPAN / 2) * length;
    tracker.marks.push({ startS, endS: (steps - SPAN / 2) * length });
    tracker.lastEnd = steps - Math.floor(SPAN / 2);
  }
  tracker.onSince = -1;
}
