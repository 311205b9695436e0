import { kaiserWindow } from './kaiser.ts';

/** The middle of what is listened to: between the VOR's tone (1020 Hz) and the DME's (1350 Hz). */
export const CENTRE_HZ = 1185;

/** Half width of what passes. The stream of about 1000 complex samples a second holds +-500 Hz. */
const HALF_WIDTH_HZ = 490;

/** Length of the filter: 26 ms falls by 60 dB within about 140 Hz. */
const FILTER_S = 0.026;

const KAISER_BETA = 5.65;

const ABOUT_HZ = 1000;

/** The filter of the front end: taps of a low-pass, already turned onto the carrier. */
export interface FrontEndTaps {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Every how many input samples one complex sample comes out. */
  readonly every: number;
  /** Complex samples a second that come out: exactly `sampleRateHz / every`. */
  readonly outRateHz: number;
}

/** The front end between two steps. Its buffers change in place. */
export interface FrontEnd {
  readonly taps: FrontEndTaps;
  /** The last samples twice over, so that a window of them is always in one piece. */
  readonly past: Float64Array;
  next: number;
  untilOut: number;
  /** Turn of the carrier at the next output, as a unit vector, and the turn from one to the next. */
  readonly carrier: Float64Array;
  readonly stepRe: number;
  readonly stepIm: number;
}

/**
 * Taps that take +-490 Hz around 1185 Hz down to about 1000 complex samples a second.
 *
 * `sampleRateHz`: 8000 to 192000. A held tone of amplitude 1 comes out with magnitude 1.
 * *Source:* windowed ideal low-pass, sin(2 pi fc n) / (pi n), with a Kaiser window.
 */
export function frontEndTaps(sampleRateHz: number): FrontEndTaps {
  const every = Math.max(1, Math.round(sampleRateHz / ABOUT_HZ));
  const length = Math.max(3, Math.round(FILTER_S * sampleRateHz) | 1);
  const window = kaiserWindow(length, KAISER_BETA);
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  const middle = (length - 1) / 2;
  const cutoff = HALF_WIDTH_HZ / sampleRateHz;
  const turn = (2 * Math.PI * CENTRE_HZ) / sampleRateHz;
  for (let n = 0; n < length; n += 1) {
    const t = n - middle;
    const ideal = t === 0 ? 2 * cutoff : Math.sin(2 * Math.PI * cutoff * t) / (Math.PI * t);
    // Twice, since half the power of a real tone lies at its negative frequency.
    const tap = 2 * ideal * (window[n] ?? 0);
    re[n] = tap * Math.cos(turn * t);
    im[n] = tap * Math.sin(turn * t);
  }
  // A microphone that is off zero must not count as sound: the taps for 0 Hz are made to cancel exactly.
  const held = sumOf(re) / sumOf(window);
  for (let n = 0; n < length; n += 1) re[n] = (re[n] ?? 0) - held * (window[n] ?? 0);
  return { re, im, every, outRateHz: sampleRateHz / every };
}

function sumOf(values: Float64Array): number {
  return values.reduce((sum, each) => sum + each, 0);
}

/** A front end that has heard nothing yet. */
export function startFrontEnd(sampleRateHz: number): FrontEnd {
  const taps = frontEndTaps(sampleRateHz);
  const turn = (-2 * Math.PI * CENTRE_HZ * taps.every) / sampleRateHz;
  return {
    taps,
    past: new Float64Array(2 * taps.re.length),
    next: 0,
    untilOut: taps.every,
    carrier: Float64Array.of(1, 0),
    stepRe: Math.cos(turn),
    stepIm: Math.sin(turn),
  };
}

/**
 * Takes in some samples and gives the complex samples that are due; nothing is allocated.
 *
 * `input`: mono, -1 to 1; what is not a number counts as silence. `output`: re, im, re, im ..., with
 * room for 2 x (input.length / every + 1) numbers. Returns how many complex samples were written.
 */
export function frontEndStep(
  state: FrontEnd,
  input: Float32Array,
  output: Float32Array | Float64Array,
): number {
  const length = state.taps.re.length;
  let count = 0;
  for (const sample of input) {
    const clean = Number.isFinite(sample) ? sample : 0;
    state.past[state.next] = clean;
    state.past[state.next + length] = clean;
    state.next = state.next + 1 === length ? 0 : state.next + 1;
    state.untilOut -= 1;
    if (state.untilOut === 0) {
      state.untilOut = state.taps.every;
      writeOne(state, output, count);
      count += 1;
    }
  }
  return count;
}

/** One complex sample: the filter over the last samples, turned back by the carrier. */
function writeOne(state: FrontEnd, output: Float32Array | Float64Array, at: number): void {
  const { taps, past, carrier } = state;
  const length = taps.re.length;
  let re = 0;
  let im = 0;
  // The taps are even in their real part and odd in the imaginary one: oldest sample first.
  for (let n = 0; n < length; n += 1) {
    const sample = past[state.next + n] ?? 0;
    re += sample * (taps.re[n] ?? 0);
    im -= sample * (taps.im[n] ?? 0);
  }
  const cos = carrier[0] ?? 1;
  const sin = carrier[1] ?? 0;
  output[2 * at] = re * cos - im * sin;
  output[2 * at + 1] = re * sin + im * cos;
  const nextCos = cos * state.stepRe - sin * state.stepIm;
  const nextSin = cos * state.stepIm + sin * state.stepRe;
  // Kept at length 1: rounding must not let the carrier grow over hours of listening.
  const trim = 1.5 - 0.5 * (nextCos * nextCos + nextSin * nextSin);
  carrier[0] = nextCos * trim;
  carrier[1] = nextSin * trim;
}
