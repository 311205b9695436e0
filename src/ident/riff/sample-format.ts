import { accept, refuse } from '../../base/result.ts';
import type { Result } from '../../base/result.ts';

/** How the samples of a WAV file are written. */
export interface SampleFormat {
  readonly kind: 'whole' | 'float';
  /** Of one sample of one channel. */
  readonly bytes: number;
  readonly channels: number;
  readonly sampleRateHz: number;
}

const LEAST_BYTES = 16;
const EXTENSIBLE_BYTES = 40;

const TAGS = { pcm: 1, float: 3, extensible: 0xfffe } as const;

/** What other format tags stand for, as recorders and editors name them. */
const OTHERS: Readonly<Record<number, string>> = {
  2: 'ADPCM',
  6: 'A-law',
  7: 'mu-law',
  17: 'IMA ADPCM',
  49: 'GSM 6.10',
  80: 'MPEG',
  85: 'MP3',
  255: 'AAC',
};

const MOST_CHANNELS = 32;

/** Rates that can be read, samples a second. */
export const SAMPLE_RATES_HZ = { least: 8000, most: 192_000 } as const;

/**
 * Reads the format chunk of a WAV file; refuses with what it says instead, in words.
 *
 * Whole numbers of 8 to 32 bits, floating-point ones of 32 or 64, plain or in the extensible form.
 * *Source:* format tags 1, 3 and 0xFFFE and the fields of WAVEFORMATEX and WAVEFORMATEXTENSIBLE (Microsoft,
 * Multiple Channel Audio Data and WAVE Files, 2001; from memory).
 */
export function sampleFormat(format: DataView): Result<SampleFormat, string> {
  if (format.byteLength < LEAST_BYTES) return refuse('a header that is cut off');
  const channels = format.getUint16(2, true);
  const sampleRateHz = format.getUint32(4, true);
  if (channels < 1 || channels > MOST_CHANNELS) return refuse(`${channels} channels`);
  const { least, most } = SAMPLE_RATES_HZ;
  if (sampleRateHz < least || sampleRateHz > most)
    return refuse(`${sampleRateHz} samples a second, not ${least} to ${most}`);
  const packing = packingOf(format);
  if (!packing.ok) return packing;
  const bits = format.getUint16(14, true);
  const bytes = bytesOf(format.getUint16(12, true), channels, bits);
  const isKnown = bits > 0 && SIZES[packing.value].includes(bytes);
  if (!isKnown) return refuse(`samples of ${bits} bits`);
  return accept({ kind: packing.value, bytes, channels, sampleRateHz });
}

/** Bytes that a sample may have. */
const SIZES: Readonly<Record<SampleFormat['kind'], readonly number[]>> = {
  whole: [1, 2, 3, 4],
  float: [4, 8],
};

function packingOf(format: DataView): Result<SampleFormat['kind'], string> {
  const tag = tagOf(format);
  if (tag === TAGS.pcm) return accept('whole');
  if (tag === TAGS.float) return accept('float');
  return refuse(`samples packed as ${OTHERS[tag] ?? `format ${tag}`}`);
}

function tagOf(format: DataView): number {
  const tag = format.getUint16(0, true);
  const isExtensible = tag === TAGS.extensible && format.byteLength >= EXTENSIBLE_BYTES;
  // The first two bytes of the subformat's GUID are the plain tag.
  return isExtensible ? format.getUint16(24, true) : tag;
}

/** 20 bits stand in 3 bytes, and a block may leave more room for a sample than its bits need. */
function bytesOf(blockBytes: number, channels: number, bits: number): number {
  const needed = Math.ceil(bits / 8);
  const given = blockBytes / channels;
  return Number.isInteger(given) && given >= needed ? given : needed;
}
