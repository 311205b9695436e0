import { accept, refuse } from '../../base/result.ts';
import type { Result } from '../../base/result.ts';

/** The two chunks of a WAV file that matter: how the sound is written, and the sound. */
export interface WavChunks {
  readonly format: DataView;
  readonly data: DataView;
  /** Whether more sound was promised than there is. */
  readonly isCutShort: boolean;
}

/** Why there is no sound: the file ends before it, or it is there and empty. */
export type NoChunks = 'ends-early' | 'no-sound';

const FIRST_CHUNK_AT = 12;
const CHUNK_HEAD_BYTES = 8;

/** Lengths from here on stand for "not known yet": the file was written while it was recorded. */
const STREAMED_FROM_BYTES = 0x7fff_0000;

/**
 * Finds the format and the data among the chunks of a WAV file.
 *
 * `bytes`: the whole file, known to begin as a WAV does. A data chunk whose length is 0 or larger than any
 * file (recorders that stream never come back to fill it in) goes on to the end of the file. Other chunks are
 * passed over, of even length or odd, with a pad byte or (against the standard, but seen) without.
 * *Source:* RIFF chunks and their pad byte: Microsoft and IBM, Multimedia Programming Interface and Data
 * Specifications 1.0, 1991 (from memory).
 */
export function wavChunks(bytes: Uint8Array): Result<WavChunks, NoChunks> {
  const file = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let format: DataView | null = null;
  let isThere = false;
  let at = FIRST_CHUNK_AT;
  while (at + CHUNK_HEAD_BYTES <= file.byteLength) {
    const id = tagAt(file, at);
    const length = file.getUint32(at + 4, true);
    const from = at + CHUNK_HEAD_BYTES;
    if (id === 'data' && !isEmptyChunk(file, from, length))
      return format === null ? refuse('ends-early') : accept(dataIn(file, format, from, length));
    if (id === 'data') isThere = true;
    if (id === 'fmt ') format = part(file, from, length);
    at = nextAt(file, from + length);
  }
  return refuse(isThere ? 'no-sound' : 'ends-early');
}

function dataIn(file: DataView, format: DataView, from: number, length: number): WavChunks {
  const isStreamed = length === 0 || length >= STREAMED_FROM_BYTES;
  const there = file.byteLength - from;
  return {
    format,
    data: part(file, from, isStreamed ? there : length),
    isCutShort: !isStreamed && length > there,
  };
}

/** A length of 0 is meant where nothing follows, or just one more chunk that fits the file. */
function isEmptyChunk(file: DataView, from: number, length: number): boolean {
  if (length !== 0) return false;
  if (from + CHUNK_HEAD_BYTES > file.byteLength) return from >= file.byteLength;
  const endsAt = from + CHUNK_HEAD_BYTES + file.getUint32(from + 4, true);
  return isTag(file, from) && Math.abs(file.byteLength - endsAt) <= 1;
}

function nextAt(file: DataView, end: number): number {
  if (end % 2 === 0) return end;
  // A pad byte is 0; a letter here begins the next chunk already.
  const isPadded = end >= file.byteLength || file.getUint8(end) === 0 || !isTag(file, end);
  return isPadded ? end + 1 : end;
}

function isTag(file: DataView, at: number): boolean {
  return at + CHUNK_HEAD_BYTES <= file.byteLength && /^[\w ]{4}$/.test(tagAt(file, at));
}

function tagAt(file: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((index) => file.getUint8(at + index)));
}

function part(file: DataView, from: number, length: number): DataView {
  const most = Math.max(0, file.byteLength - from);
  return new DataView(file.buffer, file.byteOffset + from, Math.min(length, most));
}
