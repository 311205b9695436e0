import { CENTRE_HZ } from '../../src/ident/front-end.ts';

/** Where to look until a tone has been found: around that of a VOR, 1020 Hz. */
const VOR_TONES_HZ = [970, 990, 1010, 1030, 1050, 1070];

/** Tone of a DME's ident. *Source:* AIM 1-1-7 f. */
const DME_TONE_HZ = 1350;

/** Below this there is nothing to see, decibels below full scale. */
const FLOOR_DB = -100;

/**
 * Level of the ident's tone in one block of the front end, decibels below full scale: the VOR's or the DME's,
 * whichever is louder. `toneHz`: the tone that was found; null: none yet.
 */
export function identLevelDb(block: Float32Array, rateHz: number, toneHz: number | null): number {
  const tones = toneHz === null ? VOR_TONES_HZ : [toneHz];
  return Math.max(...[...tones, DME_TONE_HZ].map((each) => toneLevelDb(block, rateHz, each)));
}

/**
 * Level of one tone in a block. The block is turned to the tone and averaged: over 32 ms that is a filter
 * of about 30 Hz.
 */
export function toneLevelDb(block: Float32Array, rateHz: number, toneHz: number): number {
  const turn = (-2 * Math.PI * (toneHz - CENTRE_HZ)) / rateHz;
  const count = block.length >> 1;
  let sumRe = 0;
  let sumIm = 0;
  for (let n = 0; n < count; n += 1) {
    const re = block[2 * n] ?? 0;
    const im = block[2 * n + 1] ?? 0;
    const cos = Math.cos(turn * n);
    const sin = Math.sin(turn * n);
    sumRe += re * cos - im * sin;
    sumIm += re * sin + im * cos;
  }
  const amplitude = Math.hypot(sumRe, sumIm) / Math.max(1, count);
  return Math.max(FLOOR_DB, 20 * Math.log10(amplitude));
}

/** Whether every sample of a block is exactly zero: no microphone is that quiet. */
export function isFlat(block: Float32Array): boolean {
  return block.every((sample) => sample === 0);
}
