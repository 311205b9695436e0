import { frontEndStep, startFrontEnd } from '../front-end.ts';
import type { Recording } from '../recording.ts';

/** What the front end gives: about 1000 complex samples a second around its centre. */
export interface Stream {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly rateHz: number;
}

const QUANTUM = 4096;

/** A recording through the front end, all at once. */
export function streamOf(recording: Recording): Stream {
  const { samples, sampleRateHz } = recording;
  const state = startFrontEnd(sampleRateHz);
  const { every, outRateHz } = state.taps;
  const size = Math.floor(samples.length / every) + 1;
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  const output = new Float64Array(2 * (Math.ceil(QUANTUM / every) + 1));
  let count = 0;
  for (let from = 0; from < samples.length; from += QUANTUM) {
    const written = frontEndStep(state, samples.subarray(from, from + QUANTUM), output);
    for (let n = 0; n < written; n += 1) {
      re[count + n] = output[2 * n] ?? 0;
      im[count + n] = output[2 * n + 1] ?? 0;
    }
    count += written;
  }
  return { re: re.subarray(0, count), im: im.subarray(0, count), rateHz: outRateHz };
}
