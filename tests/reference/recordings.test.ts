import { describe, expect, test } from 'vitest';
import wavefile from 'wavefile';
import { readWav } from '../../src/ident/read-wav.ts';
import type { Recording } from '../../src/ident/recording.ts';
import sox from './data/sox-recordings.json' with { type: 'json' };

function recordingOf(bytes: Uint8Array): Recording {
  const read = readWav(bytes);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value;
}

function largestMiss(samples: Float32Array, expected: readonly number[]): number {
  expect(samples).toHaveLength(expected.length);
  return Math.max(...expected.map((value, index) => Math.abs(value - (samples[index] ?? NaN))));
}

/** A sample is held as a 32-bit float: 24 bits of it count. */
const ROUNDING = 2 ** -23;

describe('SoX 14.4.2 (Debian) wrote these files and reads the same samples from them', () => {
  test.each(sox.files)('$name', ({ base64, sampleRateHz, channels }) => {
    const recording = recordingOf(Buffer.from(base64, 'base64'));
    const [left = [], right] = channels;
    // The two tones are within 10 dB of one another: the channels are averaged.
    const expected = left.map((value, index) => (value + (right?.[index] ?? value)) / 2);
    expect(recording.sampleRateHz).toBe(sampleRateHz);
    expect(recording.isCutShort).toBe(false);
    expect(largestMiss(recording.samples, expected)).toBeLessThanOrEqual(ROUNDING);
  });
});

/** Full scale of each depth of wavefile; its floating-point samples are -1 to 1. */
const DEPTHS = [
  { depth: '8', fullScale: 128, offset: 128 },
  { depth: '16', fullScale: 2 ** 15, offset: 0 },
  { depth: '24', fullScale: 2 ** 23, offset: 0 },
  { depth: '32', fullScale: 2 ** 31, offset: 0 },
  { depth: '32f', fullScale: 1, offset: 0 },
  { depth: '64', fullScale: 1, offset: 0 },
] as const;

const TONE = Array.from({ length: 301 }, (_, index) => 0.8 * Math.sin(index / 3));

function asDepth(samples: readonly number[], { fullScale, offset }: (typeof DEPTHS)[number]) {
  return fullScale === 1 ? [...samples] : samples.map((x) => Math.round(x * fullScale) + offset);
}

describe('the library wavefile 11 (npm) wrote these files', () => {
  test.each(DEPTHS)('one channel, $depth bits, as it was given', (form) => {
    const file = new wavefile.WaveFile();
    file.fromScratch(1, 44_100, form.depth, asDepth(TONE, form));
    const { samples, sampleRateHz } = recordingOf(file.toBuffer());
    expect(sampleRateHz).toBe(44_100);
    const step = form.fullScale === 1 ? 0 : 0.5 / form.fullScale;
    expect(largestMiss(samples, TONE)).toBeLessThanOrEqual(step + ROUNDING);
  });

  test.each(DEPTHS)('four channels of 96 kHz, $depth bits, alike in all', (form) => {
    const file = new wavefile.WaveFile();
    const channel = asDepth(TONE, form);
    file.fromScratch(4, 96_000, form.depth, [channel, channel, channel, channel]);
    const { samples, sampleRateHz } = recordingOf(file.toBuffer());
    expect(sampleRateHz).toBe(96_000);
    const step = form.fullScale === 1 ? 0 : 0.5 / form.fullScale;
    expect(largestMiss(samples, TONE)).toBeLessThanOrEqual(step + 2 * ROUNDING);
  });

  test('a text tag and a broadcast chunk before and after the sound change nothing', () => {
    const file = new wavefile.WaveFile();
    const form = DEPTHS[1];
    file.fromScratch(1, 8000, form.depth, asDepth(TONE, form));
    const plain = recordingOf(file.toBuffer());
    file.setTag('ICMT', 'odd');
    file.setiXML('<a/>');
    expect(recordingOf(file.toBuffer())).toEqual(plain);
  });

  test('RF64, the form for files of more than 4 GB, is read too', () => {
    const file = new wavefile.WaveFile();
    const form = DEPTHS[1];
    file.fromScratch(1, 8000, form.depth, asDepth(TONE, form), { container: 'RF64' });
    expect(recordingOf(file.toBuffer()).samples).toHaveLength(TONE.length);
  });

  test.each([
    ['8a', 'samples packed as A-law'],
    ['8m', 'samples packed as mu-law'],
    ['4', 'samples packed as IMA ADPCM'],
  ])('%s is refused by the name of its packing', (depth, got) => {
    const file = new wavefile.WaveFile();
    file.fromScratch(1, 8000, '16', asDepth(TONE, DEPTHS[1]));
    if (depth === '8a') file.toALaw();
    if (depth === '8m') file.toMuLaw();
    if (depth === '4') file.toIMAADPCM();
    expect(readWav(file.toBuffer())).toMatchObject({
      ok: false,
      problem: [{ field: 'body', got }],
    });
  });
});
