// The sounds of the benches, sample by sample: keyed tones, noise of a receiver and of a cabin.
import type { KeyedMark } from './ident-air-keying.ts';
import type { Chance } from './track-chance.ts';

/** Rise and fall of a mark, seconds. */
const EDGE_S = 0.006;

/** Adds keyed tones of amplitude `level`; each tone runs on through the gaps, its phase is unknown. */
export function addMarks(
  samples: Float64Array,
  rateHz: number,
  marks: readonly KeyedMark[],
  chance: Chance,
  gainAt: (atS: number) => number,
): void {
  const phases = new Map<number, number>();
  for (const mark of marks) {
    const phase = phases.get(mark.toneHz) ?? chance.uniform(0, 2 * Math.PI);
    phases.set(mark.toneHz, phase);
    const endS = mark.startS + mark.durationS;
    const first = Math.max(0, Math.floor((mark.startS - EDGE_S) * rateHz));
    const last = Math.min(samples.length - 1, Math.ceil((endS + EDGE_S) * rateHz));
    for (let index = first; index <= last; index += 1) {
      const atS = index / rateHz;
      // Half height at the start and at the end of the mark.
      const height = ramp((atS - mark.startS) / EDGE_S) * ramp((endS - atS) / EDGE_S);
      if (height === 0) continue;
      const turn = 2 * Math.PI * mark.toneHz * atS + phase;
      samples[index] = (samples[index] ?? 0) + mark.level * gainAt(atS) * height * Math.sin(turn);
    }
  }
}

function ramp(along: number): number {
  return Math.max(0, Math.min(1, along / 2 + 0.5));
}

/** White noise of a given power in 3 kHz (amplitude 1 of a tone is a power of one half). */
export function addWhite(
  samples: Float64Array,
  rateHz: number,
  snr3kDb: number,
  chance: Chance,
): void {
  const power = (0.5 * 10 ** (-snr3kDb / 10) * (rateHz / 2)) / 3000;
  const sd = Math.sqrt(power);
  for (let index = 0; index < samples.length; index += 1) {
    samples[index] = (samples[index] ?? 0) + chance.normal(sd);
  }
}

/**
 * Noise of a cabin: lines of the propeller, two blades at 2100 to 2800 turns a minute, and a broad band
 * that falls with the frequency. A tone of amplitude 1 is `db` above what lies in 300 to 3300 Hz.
 * Shape: common practice, no source.
 */
export function addCabin(samples: Float64Array, rateHz: number, db: number, chance: Chance): void {
  const lines = propellerLines(samples.length, rateHz, chance);
  const broad = fallingNoise(samples.length, rateHz, chance);
  const share = chance.uniform(0.2, 0.6);
  const linesGain = Math.sqrt(share / bandPower(lines, rateHz));
  const broadGain = Math.sqrt((1 - share) / bandPower(broad, rateHz));
  const gain = Math.sqrt(0.5 * 10 ** (-db / 10));
  for (let index = 0; index < samples.length; index += 1) {
    const noise = linesGain * (lines[index] ?? 0) + broadGain * (broad[index] ?? 0);
    samples[index] = (samples[index] ?? 0) + gain * noise;
  }
}

function propellerLines(length: number, rateHz: number, chance: Chance): Float64Array {
  const shaftHz = chance.uniform(2100, 2800) / 60;
  const orders = Math.floor(Math.min(3800, rateHz / 2) / (1.02 * shaftHz));
  const heights = Array.from({ length: orders }, (_, index) => {
    // Even orders are those of the blades; the odd ones come from blades and cylinders that differ.
    const base = (index + 1) % 2 === 0 ? 1 : 0.3;
    const height = (base / (index + 1)) * 10 ** (chance.normal(4) / 20);
    const phase = chance.uniform(0, 2 * Math.PI);
    return [height * Math.cos(phase), height * Math.sin(phase)] as const;
  });
  const swayHz = chance.uniform(0.05, 0.3);
  const sway = chance.uniform(0, 0.002) / (2 * Math.PI * swayHz);
  const swayPhase = chance.uniform(0, 2 * Math.PI);
  return Float64Array.from({ length }, (_, index) => {
    const atS = index / rateHz;
    const bendS = sway * Math.sin(2 * Math.PI * swayHz * atS + swayPhase);
    return sumOfOrders(heights, 2 * Math.PI * shaftHz * (atS + bendS));
  });
}

/** Sum of the orders at one turn of the shaft: powers of one complex number, a multiplication each. */
function sumOfOrders(heights: readonly (readonly [number, number])[], turn: number): number {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  let [re, im, sum] = [1, 0, 0];
  for (const [inPhase, quadrature] of heights) {
    const next = re * cos - im * sin;
    im = re * sin + im * cos;
    re = next;
    sum += inPhase * im + quadrature * re;
  }
  return sum;
}

/** Noise that falls by about 6 dB an octave above 250 Hz, with a part that does not. */
function fallingNoise(length: number, rateHz: number, chance: Chance): Float64Array {
  const keep = Math.exp((-2 * Math.PI * 250) / rateHz);
  const flat = chance.uniform(0.02, 0.15);
  const out = new Float64Array(length);
  let low = 0;
  for (let index = 0; index < length; index += 1) {
    const white = chance.normal(Math.sqrt(rateHz / 8000));
    low = keep * low + (1 - keep) * white;
    out[index] = low + flat * white;
  }
  return out;
}

/** Mean power in 300 to 3300 Hz. */
function bandPower(samples: Float64Array, rateHz: number): number {
  const band = Float64Array.from(samples);
  passBand(band, rateHz, 300, 3300);
  let sum = 0;
  for (const each of band) sum += each * each;
  return sum / band.length;
}

/** Filters in place: two second-order sections at either end (R. Bristow-Johnson's formulas). */
export function passBand(
  samples: Float64Array,
  rateHz: number,
  lowHz: number,
  highHz: number,
): void {
  for (const q of [0.541, 1.307]) {
    section(samples, rateHz, lowHz, q, 'high-pass');
    section(samples, rateHz, Math.min(highHz, 0.45 * rateHz), q, 'low-pass');
  }
}

function section(
  samples: Float64Array,
  rateHz: number,
  cornerHz: number,
  q: number,
  kind: 'high-pass' | 'low-pass',
): void {
  const turn = (2 * Math.PI * cornerHz) / rateHz;
  const cos = Math.cos(turn);
  const alpha = Math.sin(turn) / (2 * q);
  const edge = kind === 'low-pass' ? 1 - cos : 1 + cos;
  const middle = kind === 'low-pass' ? edge : -edge;
  const [b0, b1] = [edge / 2 / (1 + alpha), middle / (1 + alpha)];
  const [a1, a2] = [(-2 * cos) / (1 + alpha), (1 - alpha) / (1 + alpha)];
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let index = 0; index < samples.length; index += 1) {
    const x = samples[index] ?? 0;
    const y = b0 * x + b1 * x1 + b0 * x2 - a1 * y1 - a2 * y2;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    samples[index] = y;
  }
}
