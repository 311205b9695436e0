import { accept, refuse } from '../base/result.ts';
import type { FieldProblem, Result } from '../base/result.ts';
import type { Recording } from './recording.ts';
import { wavChunks } from './riff/chunks.ts';
import type { NoChunks } from './riff/chunks.ts';
import { oneChannel } from './riff/one-channel.ts';
import { SAMPLE_RATES_HZ, sampleFormat } from './riff/sample-format.ts';
import type { SampleFormat } from './riff/sample-format.ts';
import { beginsAsWav, whatFile } from './riff/what-file.ts';

const WHAT = 'a WAV recording, 8 to 32 bits or floating point, not packed';

const { least, most } = SAMPLE_RATES_HZ;
const RATES = `${least / 1000} to ${most / 1000} kHz`;

const MISSING: Readonly<Record<NoChunks, string>> = {
  'ends-early': 'a file that ends before its sound',
  'no-sound': 'a file without sound in it',
};

/**
 * Reads a WAV file of any usual kind into one channel.
 *
 * Whole numbers of 8, 16, 24 or 32 bits or floating-point ones of 32 or 64, plain or extensible, any number of
 * channels (mixed; see `oneChannel`), 8 to 192 kHz. A file that ends before its sound does is read as far as it
 * goes and says so. Refused, always by the field `body`: what is no WAV (it is told what it is instead), a packed
 * one, a rate out of range, a file without a single sample, more than `longestS` seconds (left out: any length).
 * Silence and shortness are no fault of a file.
 */
export function readWav(bytes: Uint8Array, longestS = Number.POSITIVE_INFINITY): Result<Recording> {
  if (!beginsAsWav(bytes)) return refuse([problem(WHAT, whatFile(bytes))]);
  const chunks = wavChunks(bytes);
  if (!chunks.ok) return refuse([problem(WHAT, MISSING[chunks.problem])]);
  const format = sampleFormat(chunks.value.format);
  if (!format.ok) return refuse([problem(`${WHAT}, ${RATES}`, format.problem)]);
  const lengthS = lengthIn(chunks.value.data, format.value);
  if (lengthS > longestS) return refuse([tooLong(lengthS, longestS)]);
  const samples = oneChannel(chunks.value.data, format.value);
  if (samples.length === 0) return refuse([problem(WHAT, MISSING['no-sound'])]);
  const { sampleRateHz } = format.value;
  return accept({ samples, sampleRateHz, isCutShort: chunks.value.isCutShort });
}

function lengthIn(data: DataView, { bytes, channels, sampleRateHz }: SampleFormat): number {
  return data.byteLength / (bytes * channels * sampleRateHz);
}

function tooLong(lengthS: number, longestS: number): FieldProblem {
  const most = `a recording of at most ${Math.round(longestS / 60)} minutes`;
  return problem(most, `${Math.ceil(lengthS / 60)} minutes`);
}

function problem(expected: string, got: string): FieldProblem {
  return { field: 'body', expected, got };
}
