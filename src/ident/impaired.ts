import { chanceFrom } from './drill/chance.ts';
import { IDENT_LIMITS } from './limits.ts';
import { noiseBed, rms } from './noise-bed.ts';
import type { Noise } from './noise-bed.ts';
import { keyedSamples } from './synthesis.ts';
import { timelineLengthS } from './timeline.ts';
import type { Mark } from './timeline.ts';

/** What comes between a station and the ear; what is left out is not there. */
export interface Impaired {
  readonly sampleRateHz?: number;
  /** A whole number from which the noise and the fading follow. */
  readonly seed?: number;
  /** Noise under the ident: the held tone over what of it lies in 3 kHz, decibels. */
  readonly noise?: { readonly of: Noise; readonly toneOverDb: number };
  /** The ident swells and fades by as much up and down, decibels. */
  readonly fadingDb?: number;
  /** Speech on the channel: mono, at `sampleRateHz`; the held tone over the speech while it is spoken, decibels. */
  readonly voice?: { readonly samples: Float32Array; readonly toneOverDb: number };
  /** Quiet, or noise alone, before the first mark and after the last, seconds. */
  readonly leadS?: number;
  readonly tailS?: number;
}

const QUIET_S = 1.2;

/** Amplitude of the held tone before all is brought to the same peak. */
const TONE = 0.5;
const PEAK = 0.9;

/**
 * The sound of keyed marks with what comes between a station and the ear: mono samples, -0.9 to 0.9.
 *
 * Where noise or voice are strong, all of it is brought down together, never clipped. The same marks and the
 * same seed give the same samples. `sampleRateHz`: 16000 when left out. No marks: the noise alone, 2.4 s of it
 * unless `leadS` and `tailS` say more. Marks without a tone of their own are on 1020 Hz.
 */
export function impairedSamples(
  marks: readonly (Mark & { readonly toneHz?: number })[],
  impaired: Impaired = {},
): Float32Array<ArrayBuffer> {
  const rateHz = impaired.sampleRateHz ?? IDENT_LIMITS.sampleRateHz.usual;
  const leadS = impaired.leadS ?? QUIET_S;
  const tailS = impaired.tailS ?? QUIET_S;
  const length = Math.ceil((leadS + timelineLengthS(marks) + tailS) * rateHz);
  const sound = new Float32Array(length);
  const toneOf = (mark: { readonly toneHz?: number }): number =>
    mark.toneHz ?? IDENT_LIMITS.toneHz.usual;
  for (const toneHz of new Set(marks.map(toneOf))) {
    const own = marks.filter((mark) => toneOf(mark) === toneHz);
    const tone = { toneHz, sampleRateHz: rateHz, leadS, tailS, amplitude: TONE };
    add(sound, keyedSamples(own, tone), 1);
  }
  const seed = impaired.seed ?? 0;
  fade(sound, rateHz, impaired.fadingDb ?? 0, seed);
  const { noise, voice } = impaired;
  if (noise !== undefined)
    add(sound, noiseBed(noise.of, length, rateHz, seed), levelUnder(noise.toneOverDb));
  if (voice !== undefined)
    add(sound, voice.samples, levelUnder(voice.toneOverDb) / spokenLevel(voice.samples, rateHz));
  return withPeak(sound);
}

function add(sound: Float32Array, more: Float32Array, gain: number): void {
  const length = Math.min(sound.length, more.length);
  for (let index = 0; index < length; index += 1)
    sound[index] = (sound[index] ?? 0) + gain * (more[index] ?? 0);
}

/** Root of the mean square of what lies so many decibels under the held tone. */
function levelUnder(toneOverDb: number): number {
  return (TONE / Math.SQRT2) * 10 ** (-toneOverDb / 20);
}

/** Periods of the swaying of a signal between two reflections, seconds. Common practice, no source. */
const SWAYS_S = [2.3, 3.7, 6.1] as const;

function fade(sound: Float32Array, rateHz: number, depthDb: number, seed: number): void {
  if (depthDb === 0) return;
  const chance = chanceFrom(seed + 1);
  const sways = SWAYS_S.map((periodS) => ({
    turn: (2 * Math.PI) / (periodS * (0.8 + 0.4 * chance())),
    phase: 2 * Math.PI * chance(),
  }));
  for (let index = 0; index < sound.length; index += 1) {
    const atS = index / rateHz;
    const sway = sways.reduce((sum, { turn, phase }) => sum + Math.sin(turn * atS + phase), 0);
    const gainDb = (depthDb * sway) / SWAYS_S.length;
    sound[index] = (sound[index] ?? 0) * 10 ** (gainDb / 20);
  }
}

/** Loudness of speech while it is spoken: pauses, more than 20 dB under its loudest stretch, do not count. */
function spokenLevel(voice: Float32Array, rateHz: number): number {
  const stretch = Math.max(1, Math.round(0.05 * rateHz));
  const levels: number[] = [];
  for (let from = 0; from < voice.length; from += stretch)
    levels.push(rms(voice.subarray(from, from + stretch)));
  const loudest = Math.max(0, ...levels);
  const spoken = levels.filter((level) => level > loudest / 10);
  const power = spoken.reduce((sum, level) => sum + level * level, 0) / Math.max(1, spoken.length);
  return Math.sqrt(power) || 1;
}

function withPeak(sound: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer> {
  let peak = 0;
  for (const sample of sound) peak = Math.max(peak, Math.abs(sample));
  if (peak <= PEAK) return sound;
  return sound.map((sample) => (sample * PEAK) / peak);
}
