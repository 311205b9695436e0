import { chanceFrom } from './drill/chance.ts';

/** What noise: of a receiver without a signal, or of the cabin of a light aircraft. */
export type Noise = 'receiver' | 'cabin';

/** The band in which noise is measured against a tone, Hz: 3 kHz, as a receiver's audio passes. */
const BAND_HZ = { low: 300, high: 3300 } as const;

/** Turns a minute of an engine in cruise, and how much of the cabin's noise is its lines. */
const PROPELLER = { least: 2200, most: 2600, share: 0.4, blades: 2, highestHz: 1600 } as const;

/** Above this the rest of the cabin's noise falls by 6 dB an octave, Hz. */
const FALLS_FROM_HZ = 300;

/** What lies lower does not come through a headset, and would only take room from the tone, Hz. */
const RUMBLE_HZ = 120;

/**
 * Noise of power 1 in the 3 kHz from 300 to 3300 Hz; it follows from the seed alone.
 *
 * `length`: samples; `seed`: a whole number. `receiver`: even over that band and little outside. `cabin`: the
 * lines of a propeller and noise that falls with the frequency; what of it lies from 120 to 300 Hz comes on top.
 * Shape of the cabin's noise: common practice, no source.
 */
export function noiseBed(
  noise: Noise,
  length: number,
  sampleRateHz: number,
  seed: number,
): Float32Array<ArrayBuffer> {
  const chance = chanceFrom(seed);
  if (length === 0) return new Float32Array(0);
  if (noise === 'receiver') {
    const hiss = inBand(white(length, chance), sampleRateHz);
    return scaled(hiss, 1 / rms(hiss));
  }
  const broad = falling(white(length, chance), sampleRateHz);
  const lines = propeller(length, sampleRateHz, chance);
  const { share } = PROPELLER;
  const broadGain = Math.sqrt(1 - share) / rms(inBand(broad, sampleRateHz));
  const linesGain = Math.sqrt(share) / rms(inBand(lines, sampleRateHz));
  const cabin = broad.map((value, index) => broadGain * value + linesGain * (lines[index] ?? 0));
  return filtered(cabin, RUMBLE_HZ, sampleRateHz, 'high');
}

/** Root of the mean square of some samples; 0 of none. */
export function rms(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return Math.sqrt(sum / Math.max(1, samples.length));
}

/** The sum of four uniform numbers is near enough to a normal one for the ear, and needs no logarithm. */
function white(length: number, chance: () => number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(length);
  for (let index = 0; index < length; index += 1)
    samples[index] = chance() + chance() + chance() + chance() - 2;
  return samples;
}

function falling(samples: Float32Array<ArrayBuffer>, rateHz: number): Float32Array<ArrayBuffer> {
  const keep = Math.exp((-2 * Math.PI * FALLS_FROM_HZ) / rateHz);
  let low = 0;
  return samples.map((sample) => {
    low = keep * low + (1 - keep) * sample;
    return low;
  });
}

function propeller(
  length: number,
  rateHz: number,
  chance: () => number,
): Float32Array<ArrayBuffer> {
  const { least, most, blades, highestHz } = PROPELLER;
  const shaftHz = (least + (most - least) * chance()) / 60;
  const orders = Math.floor(Math.min(highestHz, 0.45 * rateHz) / shaftHz);
  const heights = Array.from({ length: orders }, (_, index) => {
    const order = index + 1;
    // The blades' own orders stand out; the others come from blades and cylinders that differ.
    const height = ((order % blades === 0 ? 1 : 0.25) * (0.6 + 0.8 * chance())) / order;
    const phase = 2 * Math.PI * chance();
    return { sin: height * Math.cos(phase), cos: height * Math.sin(phase) };
  });
  const swayPhase = 2 * Math.PI * chance();
  return new Float32Array(length).map((_, index) => {
    const atS = index / rateHz;
    // The governor hunts: a few turns a minute, over some seconds.
    const turns = shaftHz * atS + 0.04 * Math.sin(1.1 * atS + swayPhase);
    return ordersAt(heights, 2 * Math.PI * turns);
  });
}

/** Sum of all orders at an angle of the shaft, by Clenshaw's recurrence: one cosine for all of them. */
function ordersAt(
  heights: readonly { readonly sin: number; readonly cos: number }[],
  angleRad: number,
): number {
  const twice = 2 * Math.cos(angleRad);
  let [sin1, sin2, cos1, cos2] = [0, 0, 0, 0];
  // Hundreds of thousands of samples times dozens of orders: no pairs are made in here.
  for (let order = heights.length - 1; order >= 0; order -= 1) {
    const height = heights[order];
    const sin0 = (height?.sin ?? 0) + twice * sin1 - sin2;
    const cos0 = (height?.cos ?? 0) + twice * cos1 - cos2;
    sin2 = sin1;
    sin1 = sin0;
    cos2 = cos1;
    cos1 = cos0;
  }
  return sin1 * Math.sin(angleRad) + cos1 * Math.cos(angleRad) - cos2;
}

/** Two second-order filters at either end of the band. */
function inBand(samples: Float32Array<ArrayBuffer>, rateHz: number): Float32Array<ArrayBuffer> {
  const highHz = Math.min(BAND_HZ.high, 0.45 * rateHz);
  return filtered(filtered(samples, BAND_HZ.low, rateHz, 'high'), highHz, rateHz, 'low');
}

/**
 * A state-variable filter of second order with integrators by the trapezoidal rule, Butterworth, run twice.
 * *Source:* V. Zavalishin, The Art of VA Filter Design, chapter 4 (from memory).
 */
function filtered(
  samples: Float32Array<ArrayBuffer>,
  cornerHz: number,
  rateHz: number,
  passes: 'low' | 'high',
): Float32Array<ArrayBuffer> {
  const g = Math.tan((Math.PI * cornerHz) / rateHz);
  const run = (given: Float32Array<ArrayBuffer>, damping: number): Float32Array<ArrayBuffer> => {
    let [one, two] = [0, 0];
    return given.map((sample) => {
      const high = (sample - (damping + g) * one - two) / (1 + damping * g + g * g);
      const band = g * high + one;
      const low = g * band + two;
      one = g * high + band;
      two = g * band + low;
      return passes === 'low' ? low : high;
    });
  };
  // The dampings of a Butterworth filter of order four.
  return run(run(samples, 1.8478), 0.7654);
}

function scaled(samples: Float32Array<ArrayBuffer>, gain: number): Float32Array<ArrayBuffer> {
  return samples.map((sample) => gain * sample);
}
