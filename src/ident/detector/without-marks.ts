import type { Stretch } from './amplitude.ts';
import type { Frames } from './frames.ts';
import type { Stream } from './stream.ts';

/** Rise and fall of a mark behind the front end, seconds. */
const EDGE_S = 0.012;

/** The stream without some marks of a tone: each one is taken away at its own level and phase. */
export function withoutMarks(stream: Stream, frames: Frames, marks: readonly Stretch[]): Stream {
  const re = stream.re.slice();
  const im = stream.im.slice();
  const { frameS, offsetHz } = frames;
  const edge = EDGE_S * stream.rateHz;
  for (const mark of marks) {
    const level = meanOf(frames, mark);
    const from = mark.from * frameS * stream.rateHz;
    const to = mark.to * frameS * stream.rateHz;
    const last = Math.min(re.length - 1, Math.ceil(to + edge));
    for (let n = Math.max(0, Math.floor(from - edge)); n <= last; n += 1) {
      const height = ramp((n - from) / edge) * ramp((to - n) / edge);
      const turn = (2 * Math.PI * offsetHz * n) / stream.rateHz;
      const cos = Math.cos(turn) * height;
      const sin = Math.sin(turn) * height;
      re[n] = (re[n] ?? 0) - (level.re * cos - level.im * sin);
      im[n] = (im[n] ?? 0) - (level.re * sin + level.im * cos);
    }
  }
  return { re, im, rateHz: stream.rateHz };
}

function ramp(along: number): number {
  return Math.max(0, Math.min(1, along / 2 + 0.5));
}

/** The mean phasor of a mark, without its edges. */
function meanOf(frames: Frames, mark: Stretch): { readonly re: number; readonly im: number } {
  const from = Math.max(0, Math.ceil(mark.from + 1));
  const to = Math.min(frames.count, Math.floor(mark.to - 1));
  let re = 0;
  let im = 0;
  for (let n = from; n < to; n += 1) {
    re += frames.re[n] ?? 0;
    im += frames.im[n] ?? 0;
  }
  const count = Math.max(1, to - from);
  return { re: re / count, im: im / count };
}
