import type { Frames } from './frames.ts';
import type { HeardAt } from './heard-at.ts';
import { isKeyedWell } from './keying-fit.ts';

/** How well the marks and gaps of one ident are what they should be. */
export interface Fit {
  /** Whether it lies inside the recording with 4 dots of quiet on either side: no letter is missing. */
  readonly isWhole: boolean;
  /** Power between and around the marks as a share of the power in them, noise taken off. */
  readonly leak: number;
  /** How exactly that can be told in the noise (one standard deviation). */
  readonly leakError: number;
  /** Power before and after it, the louder of the two, as a share in the same way, and how exactly. */
  readonly around: number;
  readonly aroundError: number;
  /** Whether its marks are dots and dashes, without holes. */
  readonly isKeyedWell: boolean;
}

/** Quiet that must be heard before and after, dots: more than the gap between letters. */
const QUIET_UNITS = 3.9;

/** Before and after an ident it is quiet for nearly a word gap, dots. */
const AROUND_UNITS = 5.5;

/** Frames next to an edge belong to neither side. */
const EDGE_FRAMES = 1.5;

/** Looks at one time that an ident was keyed. */
export function fitOf(frames: Frames, heard: HeardAt): Fit {
  const { marks, dotFrames } = heard;
  const first = marks[0];
  const last = marks.at(-1);
  if (first === undefined || last === undefined)
    return { isWhole: false, leak: 1, leakError: 0, around: 1, aroundError: 0, isKeyedWell: false };
  const quiet = QUIET_UNITS * dotFrames;
  const isWhole = first.from >= quiet && last.to + quiet <= frames.count;
  const on = marks.map(({ from, to }) => powerIn(frames, from, to));
  const gaps = [
    powerIn(frames, first.from - quiet, first.from),
    ...marks.slice(1).map(({ from }, n) => powerIn(frames, marks[n]?.to ?? from, from)),
    powerIn(frames, last.to, last.to + quiet),
  ];
  const far = AROUND_UNITS * dotFrames;
  const before = powerIn(frames, first.from - far, first.from);
  const after = powerIn(frames, last.to, last.to + far);
  const around = mean([before]) > mean([after]) ? before : after;
  const level = mean(on);
  return {
    isWhole,
    leak: level > 0 ? Math.max(0, mean(gaps)) / level : 1,
    leakError: level > 0 ? chance(gaps) / level : 0,
    around: level > 0 ? Math.max(0, mean([around])) / level : 1,
    aroundError: level > 0 ? chance([around]) / level : 0,
    isKeyedWell: isKeyedWell(frames, heard),
  };
}

interface Power {
  readonly sum: number;
  readonly weight: number;
  readonly frames: number;
}

/** Power beyond the noise in a stretch; frames with much noise count little. */
function powerIn(frames: Frames, from: number, to: number): Power {
  let sum = 0;
  let weight = 0;
  let count = 0;
  const end = Math.min(frames.count, Math.floor(to - EDGE_FRAMES));
  for (let n = Math.max(0, Math.ceil(from + EDGE_FRAMES)); n < end; n += 1) {
    const noise = Math.max(frames.noise[n] ?? 0, 1e-30);
    const power = (frames.re[n] ?? 0) ** 2 + (frames.im[n] ?? 0) ** 2;
    sum += (power - noise) / noise;
    weight += 1 / noise;
    count += 1;
  }
  return { sum, weight, frames: count };
}

function mean(powers: readonly Power[]): number {
  const weight = powers.reduce((all, each) => all + each.weight, 0);
  return weight === 0 ? 0 : powers.reduce((all, { sum }) => all + sum, 0) / weight;
}

/** Standard deviation of that mean when there is only noise: each frame's power strays by its mean. */
function chance(powers: readonly Power[]): number {
  const weight = powers.reduce((all, each) => all + each.weight, 0);
  const count = powers.reduce((all, each) => all + each.frames, 0);
  return weight === 0 ? 0 : Math.sqrt(count) / weight;
}
