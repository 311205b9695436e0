import { lnI0 } from './bessel.ts';
import type { Frames } from './frames.ts';
import type { Stretch } from './amplitude.ts';

const MOST_OFF_HZ = 2.6;
const STEP_HZ = 0.2;

/**
 * How far the tone lies from where it was looked for, Hz: the shift under which the marks found hold
 * most evidence. `amplitude`: of the tone.
 */
export function detuningHz(frames: Frames, marks: readonly Stretch[], amplitude: number): number {
  let best = 0;
  let most = -Infinity;
  const values: number[] = [];
  const steps = Math.round(MOST_OFF_HZ / STEP_HZ);
  for (let step = -steps; step <= steps; step += 1) {
    const here = marks.reduce(
      (sum, mark) => sum + shiftedEvidence(frames, mark, amplitude, step * STEP_HZ),
      0,
    );
    values.push(here);
    if (here > most) {
      most = here;
      best = step;
    }
  }
  const low = values[best + steps - 1] ?? most;
  const high = values[best + steps + 1] ?? most;
  const bend = low - 2 * most + high;
  return STEP_HZ * (best + (bend < 0 ? (0.5 * (low - high)) / bend : 0));
}

function shiftedEvidence(
  frames: Frames,
  mark: Stretch,
  amplitude: number,
  shiftHz: number,
): number {
  const turn = -2 * Math.PI * shiftHz * frames.frameS;
  let re = 0;
  let im = 0;
  const to = Math.min(frames.count, Math.round(mark.to));
  for (let n = Math.max(0, Math.round(mark.from)); n < to; n += 1) {
    const gain = amplitude / Math.max(frames.noise[n] ?? 1, (amplitude * amplitude) / 4);
    const cos = Math.cos(turn * n) * gain;
    const sin = Math.sin(turn * n) * gain;
    const x = frames.re[n] ?? 0;
    const y = frames.im[n] ?? 0;
    re += x * cos - y * sin;
    im += x * sin + y * cos;
  }
  return lnI0(2 * Math.sqrt(re * re + im * im));
}
