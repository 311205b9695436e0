import { assert } from '../base/assert.ts';

const HEADER_BYTES = 44;
const BYTES_PER_SAMPLE = 2;
const LARGEST_SAMPLE = 32_767;

/**
 * A WAV file of one channel with 16-bit samples.
 *
 * `samples`: -1 to 1; louder ones are clipped, one that is not a number becomes silence.
 * `sampleRateHz`: a whole number, samples a second.
 * *Source:* RIFF WAVE, format tag 1 (PCM), little-endian (Microsoft and IBM, Multimedia Programming
 * Interface and Data Specifications 1.0, 1991; from memory).
 */
export function writeWav(samples: Float32Array, sampleRateHz: number): Uint8Array<ArrayBuffer> {
  assert(Number.isInteger(sampleRateHz) && sampleRateHz > 0, `not a sample rate: ${sampleRateHz}`);
  const dataBytes = samples.length * BYTES_PER_SAMPLE;
  const bytes = new Uint8Array(HEADER_BYTES + dataBytes);
  const view = new DataView(bytes.buffer);
  writeHeader(view, dataBytes, sampleRateHz);
  for (let index = 0; index < samples.length; index += 1) {
    const at = HEADER_BYTES + index * BYTES_PER_SAMPLE;
    view.setInt16(at, sample16(samples[index] ?? 0), true);
  }
  return bytes;
}

function sample16(sample: number): number {
  const clipped = Number.isNaN(sample) ? 0 : Math.min(1, Math.max(-1, sample));
  return Math.round(clipped * LARGEST_SAMPLE);
}

function writeHeader(view: DataView, dataBytes: number, sampleRateHz: number): void {
  writeTag(view, 0, 'RIFF');
  view.setUint32(4, HEADER_BYTES - 8 + dataBytes, true);
  writeTag(view, 8, 'WAVE');
  writeTag(view, 12, 'fmt ');
  view.setUint32(16, 16, true); // length of the format block
  view.setUint16(20, 1, true); // PCM
  view.setUint16(22, 1, true); // one channel
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, sampleRateHz * BYTES_PER_SAMPLE, true);
  view.setUint16(32, BYTES_PER_SAMPLE, true);
  view.setUint16(34, 8 * BYTES_PER_SAMPLE, true);
  writeTag(view, 36, 'data');
  view.setUint32(40, dataBytes, true);
}

function writeTag(view: DataView, at: number, tag: string): void {
  for (const [index, letter] of Array.from(tag).entries()) {
    view.setUint8(at + index, letter.charCodeAt(0));
  }
}
