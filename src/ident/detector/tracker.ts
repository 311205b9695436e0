import { quantile } from './order.ts';

/** How high the tone stands, averaged over some steps of 20 ms, with what it usually reaches. */
interface Gauge {
  /** Steps that are averaged. */
  readonly span: number;
  /** Levels of the last ten seconds, round and round. */
  readonly levels: Float64Array;
  level: number;
  peak: number;
  floor: number;
}

/** A first, quick idea of what is keyed at one tone, sample by sample. Its fields change in place. */
export interface Tracker {
  readonly rateHz: number;
  /** Samples in one step of 20 ms. */
  readonly step: number;
  offsetHz: number;
  /** Phasor sums: the step under way, then the last ones, newest first. */
  readonly sums: Float64Array;
  filled: number;
  steps: number;
  /** Quick enough for single marks. */
  readonly quick: Gauge;
  /** Steady enough to tell quiet from a faint tone. */
  readonly steady: Gauge;
  /** Start of the mark under way, steps; -1 while it is quiet. */
  onSince: number;
  /** When the steady gauge last stood high, steps; -1 before it did. */
  lastHigh: number;
  /** Marks since they were last taken away: start and end, seconds. */
  readonly marks: { readonly startS: number; readonly endS: number }[];
  /** Steps in which the steady gauge stood high, ever. */
  highSteps: number;
}

const STEP_S = 0.02;
const MEMORY_STEPS = 500;
const QUICK_SPAN = 3;
const STEADY_SPAN = 8;

/** A blip shorter than this is no mark, seconds. */
const SHORTEST_S = 0.05;

/** Tracks a tone `offsetHz` from the stream's centre. */
export function startTracker(rateHz: number, offsetHz: number): Tracker {
  return {
    rateHz,
    step: Math.round(STEP_S * rateHz),
    offsetHz,
    sums: new Float64Array(2 * (STEADY_SPAN + 1)),
    filled: 0,
    steps: 0,
    quick: gauge(QUICK_SPAN),
    steady: gauge(STEADY_SPAN),
    onSince: -1,
    lastHigh: -1,
    marks: [],
    highSteps: 0,
  };
}

function gauge(span: number): Gauge {
  return { span, levels: new Float64Array(MEMORY_STEPS), level: 0, peak: 0, floor: 0 };
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

/** Seconds since the tone was last there; null before it ever was. */
export function quietS(tracker: Tracker): number | null {
  if (tracker.lastHigh < 0) return null;
  // Half of the steady gauge's span hangs over the end of a mark.
  return Math.max(0, tracker.steps - tracker.lastHigh + STEADY_SPAN / 2) * stepS(tracker);
}

/** Seconds of tone so far. */
export function toneS(tracker: Tracker): number {
  return tracker.highSteps * stepS(tracker);
}

function stepS({ step, rateHz }: Tracker): number {
  return step / rateHz;
}

function stepOn(tracker: Tracker): void {
  tracker.steps += 1;
  tracker.filled = 0;
  for (const each of [tracker.quick, tracker.steady]) read(tracker, each);
  tracker.sums.copyWithin(2, 0, 2 * STEADY_SPAN);
  tracker.sums.fill(0, 0, 2);
  if (isHigh(tracker.steady)) {
    tracker.lastHigh = tracker.steps;
    tracker.highSteps += 1;
  }
  mark(tracker);
}

function read({ sums, step, steps }: Tracker, each: Gauge): void {
  let re = 0;
  let im = 0;
  for (let n = 0; n < each.span; n += 1) {
    re += sums[2 * n] ?? 0;
    im += sums[2 * n + 1] ?? 0;
  }
  each.level = Math.sqrt(re * re + im * im) / (each.span * step);
  each.levels[steps % MEMORY_STEPS] = each.level;
  if (steps % 5 !== 0) return;
  const known = each.levels.subarray(0, Math.min(MEMORY_STEPS, steps + 1));
  each.peak = quantile(known, 0.9);
  each.floor = quantile(known, 0.3);
}

/** Whether the level passes half of what it usually reaches. */
function isHigh({ level, peak, floor }: Gauge): boolean {
  return peak > 2 * floor && level > 0.5 * (peak + floor);
}

/** Begins or ends a mark. */
function mark(tracker: Tracker): void {
  const { quick, steps } = tracker;
  const isOn = isHigh(quick);
  if (isOn && tracker.onSince < 0) tracker.onSince = steps;
  if (isOn || tracker.onSince < 0) return;
  const length = stepS(tracker);
  if ((steps - tracker.onSince) * length >= SHORTEST_S) {
    // The level is that of the last three steps: their middle lies 1.5 steps back.
    const startS = (tracker.onSince - QUICK_SPAN / 2) * length;
    tracker.marks.push({ startS, endS: (steps - QUICK_SPAN / 2) * length });
  }
  tracker.onSince = -1;
}
