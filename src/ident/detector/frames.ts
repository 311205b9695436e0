import type { NoiseBeside } from './noise.ts';
import type { Stream } from './stream.ts';

/** The sound at one tone in short frames: the mean phasor of each and the variance of its noise. */
export interface Frames {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly noise: Float64Array;
  readonly count: number;
  readonly frameS: number;
  /** The tone, from the stream's centre. */
  readonly offsetHz: number;
}

/** Length of a frame: fine enough for the dots of 15 words a minute (80 ms). */
const FRAME_S = 0.01;

/** The stream mixed down by a tone and averaged in frames of 10 ms. */
export function framesAt(stream: Stream, offsetHz: number, beside: NoiseBeside): Frames {
  const length = Math.max(1, Math.round(FRAME_S * stream.rateHz));
  const count = Math.floor(stream.re.length / length);
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const noise = new Float64Array(count);
  const frameS = length / stream.rateHz;
  const stepCos = Math.cos((2 * Math.PI * offsetHz) / stream.rateHz);
  const stepSin = -Math.sin((2 * Math.PI * offsetHz) / stream.rateHz);
  for (let frame = 0; frame < count; frame += 1) {
    const turn = (-2 * Math.PI * offsetHz * frame * length) / stream.rateHz;
    let cos = Math.cos(turn);
    let sin = Math.sin(turn);
    let sumRe = 0;
    let sumIm = 0;
    for (let n = frame * length; n < (frame + 1) * length; n += 1) {
      const x = stream.re[n] ?? 0;
      const y = stream.im[n] ?? 0;
      sumRe += x * cos - y * sin;
      sumIm += x * sin + y * cos;
      const kept = cos * stepCos - sin * stepSin;
      sin = cos * stepSin + sin * stepCos;
      cos = kept;
    }
    re[frame] = sumRe / length;
    im[frame] = sumIm / length;
    noise[frame] = (beside.variance * factorAt(beside, (frame + 0.5) * frameS)) / length;
  }
  return { re, im, noise, count, frameS, offsetHz };
}

/** How much louder than usual the noise is at a time; windows are centred one hop after their start. */
function factorAt(beside: NoiseBeside, atS: number): number {
  const last = beside.factor.length - 1;
  if (last < 0) return 1;
  const at = Math.min(last, Math.max(0, atS / beside.hopS - 1));
  const below = Math.floor(at);
  const low = beside.factor[below] ?? 1;
  return low + (at - below) * ((beside.factor[below + 1] ?? low) - low);
}

/** The same frames two by two: half as many, for a first rough search. */
export function halved(frames: Frames): Frames {
  const count = frames.count >> 1;
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const noise = new Float64Array(count);
  for (let n = 0; n < count; n += 1) {
    re[n] = ((frames.re[2 * n] ?? 0) + (frames.re[2 * n + 1] ?? 0)) / 2;
    im[n] = ((frames.im[2 * n] ?? 0) + (frames.im[2 * n + 1] ?? 0)) / 2;
    noise[n] = ((frames.noise[2 * n] ?? 0) + (frames.noise[2 * n + 1] ?? 0)) / 4;
  }
  return { re, im, noise, count, frameS: 2 * frames.frameS, offsetHz: frames.offsetHz };
}
