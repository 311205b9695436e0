// What lies between a station and the microphone in the benches: fading, echoes, gain control, clipping.
import { pick } from './ident-air-keying.ts';
import type { Chance } from './track-chance.ts';

/** A gain that wanders within +-`db`: two slow swings of unlike period. */
export function fadingGain(db: number, chance: Chance): (atS: number) => number {
  const slow = { periodS: chance.uniform(2, 8), phase: chance.uniform(0, 2 * Math.PI) };
  const quick = { periodS: chance.uniform(0.8, 2), phase: chance.uniform(0, 2 * Math.PI) };
  return (atS) => {
    const swing =
      0.6 * Math.sin((2 * Math.PI * atS) / slow.periodS + slow.phase) +
      0.4 * Math.sin((2 * Math.PI * atS) / quick.periodS + quick.phase);
    return 10 ** ((db * swing) / 20);
  };
}

/** Echoes of a cabin or a room, in place: 30 of them within the time in which they fall by 60 dB. */
export function echo(samples: Float64Array, rateHz: number, chance: Chance): void {
  const fallS = chance.uniform(0.15, 0.4);
  const level = 10 ** (chance.uniform(-12, -4) / 20);
  const taps = Array.from({ length: 30 }, () => {
    const delayS = chance.uniform(0.004, fallS);
    const sign = pick(chance, 2) === 0 ? 1 : -1;
    return {
      delay: Math.round(delayS * rateHz),
      gain: sign * 10 ** ((-3 * delayS) / fallS),
    };
  });
  const norm = level / Math.sqrt(taps.reduce((sum, { gain }) => sum + gain * gain, 0));
  const dry = Float64Array.from(samples);
  for (const { delay, gain } of taps) {
    for (let index = delay; index < samples.length; index += 1) {
      samples[index] = (samples[index] ?? 0) + norm * gain * (dry[index - delay] ?? 0);
    }
  }
}

/** Automatic gain control, in place: falls within 10 ms, comes back within 0.2 to 1 s. */
export function controlGain(samples: Float64Array, rateHz: number, chance: Chance): void {
  const fall = 1 - Math.exp(-1 / (0.01 * rateHz));
  const rise = 1 - Math.exp(-1 / (chance.uniform(0.2, 1) * rateHz));
  const strength = chance.uniform(0.6, 0.95);
  let level = rms(samples);
  const floor = 0.05 * level;
  for (let index = 0; index < samples.length; index += 1) {
    const sample = samples[index] ?? 0;
    const size = Math.abs(sample) * Math.SQRT2;
    level += (size > level ? fall : rise) * (size - level);
    samples[index] = sample / (level + floor) ** strength;
  }
}

/** Clips in place at `db` under the loudest that comes often (the 99.5 % quantile). */
export function clip(samples: Float64Array, db: number): void {
  const sizes = Float64Array.from(samples, Math.abs).sort();
  const limit = (sizes[Math.floor(0.995 * sizes.length)] ?? 1) * 10 ** (-db / 20);
  for (let index = 0; index < samples.length; index += 1) {
    samples[index] = Math.max(-limit, Math.min(limit, samples[index] ?? 0));
  }
}

/** Root mean square. */
function rms(samples: Float64Array): number {
  let sum = 0;
  for (const each of samples) sum += each * each;
  return Math.sqrt(sum / Math.max(1, samples.length));
}

/** As a recording: the loudest sample at a level between 0.05 and 0.95. */
export function recorded(samples: Float64Array, chance: Chance): Float32Array {
  const peak = samples.reduce((most, each) => Math.max(most, Math.abs(each)), 1e-9);
  const gain = 10 ** chance.uniform(-1.3, -0.02) / peak;
  return Float32Array.from(samples, (each) => each * gain);
}
