import type { SampleFormat } from './sample-format.ts';

/** A channel so much weaker than the loudest, in power, is not the receiver: it is left out. */
const LEAST_SHARE = 0.1;

/**
 * The sound of a data chunk as one channel: samples of -1 to 1.
 *
 * Channels of about the same loudness are averaged; one more than 10 dB under the loudest is left out, and
 * where the average nearly vanishes (the same sound on both, one turned over) the loudest alone is taken.
 * A last sample that is cut off is left out. Floating-point sound beyond full scale is brought down as a whole;
 * what is not a number becomes silence.
 * *Source:* 8-bit samples count from 128, larger ones are signed, both relative to half their range: RIFF WAVE
 * (see `wavChunks`). The 10 dB: common practice, no source.
 */
export function oneChannel(data: DataView, format: SampleFormat): Float32Array<ArrayBuffer> {
  const { channels, bytes } = format;
  const length = Math.floor(data.byteLength / (channels * bytes));
  const parts = Array.from({ length: channels }, (_, channel) =>
    channelOf(data, format, channel, length),
  );
  const scale = 1 / Math.max(1, ...parts.map(peakOf));
  if (parts.length === 1) return averageOf(parts, length, scale);
  return mixed(parts, length, scale);
}

type Channel = Float32Array<ArrayBuffer> | Float64Array<ArrayBuffer>;

function channelOf(
  data: DataView,
  { kind, bytes, channels }: SampleFormat,
  channel: number,
  length: number,
): Channel {
  const samples = bytes === 8 ? new Float64Array(length) : new Float32Array(length);
  const read = READERS[`${kind}-${bytes}`] ?? (() => 0);
  const step = channels * bytes;
  for (let index = 0, at = channel * bytes; index < length; index += 1, at += step) {
    const value = read(data, at);
    samples[index] = Number.isFinite(value) ? value : 0;
  }
  return samples;
}

const READERS: Readonly<Record<string, (data: DataView, at: number) => number>> = {
  'whole-1': (data, at) => (data.getUint8(at) - 128) / 128,
  'whole-2': (data, at) => data.getInt16(at, true) / 32_768,
  'whole-3': (data, at) => (data.getInt16(at + 1, true) + data.getUint8(at) / 256) / 32_768,
  'whole-4': (data, at) => data.getInt32(at, true) / 2_147_483_648,
  'float-4': (data, at) => data.getFloat32(at, true),
  'float-8': (data, at) => data.getFloat64(at, true),
};

function mixed(
  parts: readonly Channel[],
  length: number,
  scale: number,
): Float32Array<ArrayBuffer> {
  const powers = parts.map(powerOf);
  const most = Math.max(...powers);
  const loud = parts.filter((_, channel) => (powers[channel] ?? 0) >= LEAST_SHARE * most);
  const average = averageOf(loud, length, scale);
  if (powerOf(average) >= LEAST_SHARE * most * scale * scale) return average;
  const loudest = parts[powers.indexOf(most)];
  return loudest === undefined ? average : averageOf([loudest], length, scale);
}

function averageOf(
  parts: readonly Channel[],
  length: number,
  scale: number,
): Float32Array<ArrayBuffer> {
  const average = new Float32Array(length);
  const share = scale / parts.length;
  for (const part of parts) {
    for (let index = 0; index < length; index += 1)
      average[index] = (average[index] ?? 0) + share * (part[index] ?? 0);
  }
  return average;
}

/** Mean power about the mean: a constant offset of a sound card is no sound. */
function powerOf(samples: Channel): number {
  let [sum, squares] = [0, 0];
  for (const sample of samples) {
    sum += sample;
    squares += sample * sample;
  }
  const count = Math.max(1, samples.length);
  return Math.max(0, squares / count - (sum / count) ** 2);
}

function peakOf(samples: Channel): number {
  let peak = 0;
  for (const sample of samples) peak = Math.max(peak, Math.abs(sample));
  return peak;
}
