import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readWav } from '../../src/ident/read-wav.ts';
import type { Recording } from '../../src/ident/recording.ts';
import { writeWav } from '../../src/ident/wav.ts';

const TONE = Float32Array.from({ length: 400 }, (_, index) => 0.5 * Math.sin(index / 2));
const FILE = writeWav(TONE, 8000);
const DATA_AT = 36;

function recordingOf(bytes: Uint8Array): Recording {
  const read = readWav(bytes);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value;
}

function refusedAs(bytes: Uint8Array): string {
  const read = readWav(bytes);
  if (read.ok) throw new Error('it was read');
  expect(read.problem.map(({ field }) => field)).toEqual(['body']);
  expect(read.problem[0]?.expected).toMatch(/^a WAV recording/);
  return read.problem[0]?.got ?? '';
}

const text = (letters: string): Uint8Array =>
  Uint8Array.from(letters, (letter) => letter.charCodeAt(0));

const joined = (...parts: readonly Uint8Array[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

function chunk(id: string, length: number, body: Uint8Array): Uint8Array {
  const head = new Uint8Array(8);
  head.set(text(id));
  new DataView(head.buffer).setUint32(4, length, true);
  return joined(head, body);
}

/** The file with more chunks before its sound. */
const withBefore = (...chunks: readonly Uint8Array[]): Uint8Array =>
  joined(FILE.slice(0, DATA_AT), ...chunks, FILE.slice(DATA_AT));

function withField(at: number, bytes: 2 | 4, value: number): Uint8Array {
  const changed = FILE.slice();
  const view = new DataView(changed.buffer);
  if (bytes === 2) view.setUint16(at, value, true);
  else view.setUint32(at, value, true);
  return changed;
}

function stereo(left: (index: number) => number, right: (index: number) => number): Uint8Array {
  const interleaved = Float32Array.from({ length: 800 }, (_, index) =>
    index % 2 === 0 ? left(index / 2) : right((index - 1) / 2),
  );
  const bytes = writeWav(interleaved, 8000);
  const view = new DataView(bytes.buffer);
  view.setUint16(22, 2, true);
  view.setUint32(28, 32_000, true);
  view.setUint16(32, 4, true);
  return bytes;
}

const largest = (samples: Float32Array): number => Math.max(...samples.map(Math.abs));

describe('a recording', () => {
  test('is what was written, to half a step of 16 bits', () => {
    const { samples, sampleRateHz, isCutShort } = recordingOf(FILE);
    expect({ sampleRateHz, isCutShort }).toEqual({ sampleRateHz: 8000, isCutShort: false });
    expect(samples).toHaveLength(400);
    for (const [index, value] of TONE.entries())
      expect(Math.abs(value - (samples[index] ?? 9))).toBeLessThan(1.1 / 32_768);
  });

  test('may stand in the middle of a larger buffer', () => {
    const padded = joined(new Uint8Array(13), FILE);
    expect(recordingOf(padded.subarray(13)).samples).toEqual(recordingOf(FILE).samples);
  });

  test.each([
    ['LIST of even length', [chunk('LIST', 4, text('INFO'))]],
    ['JUNK of odd length with its pad byte', [chunk('JUNK', 3, new Uint8Array(4))]],
    ['a chunk of odd length without a pad byte', [chunk('bext', 5, new Uint8Array(5))]],
    ['an empty data chunk', [chunk('data', 0, new Uint8Array(0))]],
    ['many', ['PEAK', 'fact', 'cue ', 'id3 '].map((id) => chunk(id, 4, new Uint8Array(4)))],
  ])('with chunks before its sound is the same: %s', (_what, chunks) => {
    const read = readWav(withBefore(...chunks));
    // The empty chunk is followed by one that fits the rest of the file: it is empty indeed.
    expect(read).toEqual(readWav(FILE));
  });

  test.each([0, 0xffff_ffff, 0x7fff_f000])(
    'whose length was never filled in (%d) goes on to the end of the file',
    (length) => {
      const { samples, isCutShort } = recordingOf(withField(40, 4, length));
      expect(samples).toHaveLength(400);
      expect(isCutShort).toBe(false);
    },
  );

  test('that is cut off is read as far as it goes, and says so', () => {
    const { samples, isCutShort } = recordingOf(FILE.slice(0, 44 + 201));
    expect(samples).toEqual(recordingOf(FILE).samples.slice(0, 100));
    expect(isCutShort).toBe(true);
  });

  test('of silence, or of one sample, is one too', () => {
    expect(largest(recordingOf(writeWav(new Float32Array(80), 8000)).samples)).toBe(0);
    expect(recordingOf(writeWav(Float32Array.of(0.5), 8000)).samples).toHaveLength(1);
  });
});

describe('a recording that is too long for who reads it', () => {
  const minutes = writeWav(new Float32Array(8000 * 150), 8000);

  test('is refused before its samples are looked at', () => {
    expect(readWav(minutes, 120)).toEqual({
      ok: false,
      problem: [{ field: 'body', expected: 'a recording of at most 2 minutes', got: '3 minutes' }],
    });
  });

  test('is read by who takes any length', () => {
    expect(recordingOf(minutes).samples).toHaveLength(8000 * 150);
  });
});

describe('two channels', () => {
  const loud = (index: number): number => 0.5 * Math.sin(index / 2);

  test('of about the same loudness are averaged', () => {
    const { samples } = recordingOf(stereo(loud, (index) => loud(index) / 2));
    expect(largest(samples)).toBeCloseTo(0.375, 2);
  });

  test.each([
    ['silent', () => 0],
    ['20 dB weaker', (index: number) => loud(index) / 10],
    ['nothing but a constant offset', () => 0.4],
  ])('one of them %s: the other is taken as it is', (_what, other) => {
    expect(largest(recordingOf(stereo(loud, other)).samples)).toBeCloseTo(0.5, 2);
    expect(largest(recordingOf(stereo(other, loud)).samples)).toBeCloseTo(0.5, 2);
  });

  test('that cancel each other out do not leave silence', () => {
    const { samples } = recordingOf(stereo(loud, (index) => -loud(index)));
    expect(largest(samples)).toBeCloseTo(0.5, 2);
  });
});

describe('floating-point samples', () => {
  function floats(values: readonly number[]): Uint8Array {
    const body = new Uint8Array(new Float32Array(values).buffer);
    const head = withField(20, 2, 3).slice(0, DATA_AT);
    const view = new DataView(head.buffer);
    view.setUint16(32, 4, true);
    view.setUint16(34, 32, true);
    return joined(head, chunk('data', body.length, body));
  }

  test('beyond full scale are brought down as a whole', () => {
    expect([...recordingOf(floats([0, 2, -4, 1])).samples]).toEqual([0, 0.5, -1, 0.25]);
  });

  test('that are no numbers are silence', () => {
    const { samples } = recordingOf(floats([0.5, NaN, Infinity, -Infinity]));
    expect([...samples]).toEqual([0.5, 0, 0, 0]);
  });
});

describe('what is no recording that can be read is refused by the field body', () => {
  test.each([
    ['nothing', new Uint8Array(0), 'nothing'],
    ['text', text('hello, this is not a sound'), 'something else'],
    ['MP3 with a title', joined(text('ID3'), new Uint8Array(50)), 'an MP3 file'],
    ['MP3 without', joined(Uint8Array.of(0xff, 0xfb, 0x90, 0), new Uint8Array(50)), 'an MP3 file'],
    ['Ogg', joined(text('OggS'), new Uint8Array(50)), 'an Ogg file'],
    ['FLAC', joined(text('fLaC'), new Uint8Array(50)), 'a FLAC file'],
    ['M4A', joined(new Uint8Array(4), text('ftypM4A '), new Uint8Array(50)), /^an MPEG-4 file/],
    ['AIFF', joined(text('FORM'), new Uint8Array(50)), 'an AIFF file'],
    ['a RIFF that is a video', joined(text('RIFF1234AVI '), new Uint8Array(50)), /video/],
    ['a header only', FILE.slice(0, 44), 'a file without sound in it'],
    ['less than a header', FILE.slice(0, 30), 'a file that ends before its sound'],
    ['four letters', text('RIFF'), /RIFF/],
    ['no format', joined(FILE.slice(0, 12), FILE.slice(36)), 'a file that ends before its sound'],
    ['4 kHz', withField(24, 4, 4000), /4000 samples a second/],
    ['384 kHz', withField(24, 4, 384_000), /384000 samples a second/],
    ['no channels', withField(22, 2, 0), '0 channels'],
    ['MP3 inside', withField(20, 2, 85), 'samples packed as MP3'],
    ['an unknown packing', withField(20, 2, 999), 'samples packed as format 999'],
    ['samples of 0 bits', withField(34, 2, 0), 'samples of 0 bits'],
    ['floating point of 16 bits', withField(20, 2, 3), 'samples of 16 bits'],
  ])('%s', (_what, bytes, got) => {
    expect(refusedAs(bytes)).toMatch(got);
  });

  test('any bytes are read or refused, and what is read is of numbers from -1 to 1', () => {
    const bytes = fc.uint8Array({ maxLength: 300 });
    const damaged = fc
      .tuple(bytes, fc.nat(FILE.length - 1))
      .map(([junk, at]) => joined(FILE.slice(0, at), junk, FILE.slice(at + junk.length)));
    fc.assert(
      fc.property(fc.oneof(bytes, damaged), (file) => {
        const read = readWav(file);
        if (!read.ok) return read.problem.every(({ field }) => field === 'body');
        return read.value.samples.length > 0 && largest(read.value.samples) <= 1;
      }),
    );
  });
});
