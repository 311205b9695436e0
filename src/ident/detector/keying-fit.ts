import type { Frames } from './frames.ts';
import type { HeardAt } from './heard-at.ts';
import { measuredMark } from './measured-mark.ts';
import type { Bounds, MeasuredMark } from './measured-mark.ts';
import { quantile } from './order.ts';

/** How far a mark is followed beyond where it should end, dots, and how near to its neighbour. */
const REACH_UNITS = 1.2;
const CLEAR_UNITS = 0.15;

/** Under this a hand is as even as a machine (median stray, logarithm): then one odd mark is none of its. */
const EVEN = 0.045;

/** A mark this much weaker than the loudest one is none. */
const FAINTEST = 0.15;

/** A gap is measured where the marks stand out so much, energy over noise in a frame. */
const MEASURABLE = 2;

/** How exactly a gap can be measured, frames; and where the level changes so much over it, dots. */
const GAP_ERROR = 2;
const FADING = 1.35;
const FADING_ERROR = 0.5;

/**
 * Whether one occurrence is keyed in dots, dashes and gaps: none far from its length, no hole in a mark.
 *
 * In dots, by a machine: dot 0.6 to 1.5, dash 2.3 to 3.8, gaps 0.45 to 1.5 and 2.3 to 4.2; by hand wider,
 * about the hand's own lengths. Only what stands out of the noise speaks against it: in faint sound the
 * answer is true.
 */
export function isKeyedWell(frames: Frames, heard: HeardAt): boolean {
  const { marks, dotFrames } = heard;
  const elements = heard.patterns.join('');
  const isEven = heard.isByHand && strayOf(heard) < EVEN;
  const noise = quantile(frames.noise, 0.5);
  const measured = marks.map((mark, n) => {
    const clear = CLEAR_UNITS * dotFrames;
    const reach = REACH_UNITS * dotFrames;
    const from = Math.max(mark.from - reach, (marks[n - 1]?.to ?? -Infinity) + clear, 0);
    const to = Math.min(mark.to + reach, (marks[n + 1]?.from ?? Infinity) - clear, frames.count);
    const isCut = mark.from < 0 || mark.to > frames.count;
    if (isCut || to - from < 3) return null;
    const window = { from: Math.floor(from), to: Math.ceil(to) };
    return measuredMark(
      frames,
      window,
      mark,
      inFrames(boundsOf(elements[n], heard, isEven), dotFrames),
      noise,
    );
  });
  const levels = measured.map((mark) => mark?.level ?? Infinity).filter(Number.isFinite);
  const loudest = Math.max(0, ...levels);
  const isMark = (mark: MeasuredMark | null): boolean =>
    mark === null || (mark.isOne && mark.level > FAINTEST * loudest);
  return measured.every(isMark) && areGapsRight(measured, heard);
}

/** How far the marks stray from the lengths learnt, as a rule (median, logarithm). */
function strayOf({ marks, dotFrames, ratios, patterns }: HeardAt): number {
  const elements = patterns.join('');
  const strays = marks.map(({ from, to }, n) => {
    const units = elements[n] === '-' ? ratios.dash : 1;
    return Math.abs(Math.log((to - from) / (units * dotFrames)));
  });
  return quantile(Float64Array.from(strays), 0.5);
}

function boundsOf(
  element: string | undefined,
  { ratios, isByHand }: HeardAt,
  isEven: boolean,
): Bounds {
  const isDash = element === '-';
  if (!isByHand) return isDash ? { least: 2.3, most: 3.8 } : { least: 0.6, most: 1.5 };
  if (!isDash) return { least: 0.68, most: 1.42 };
  const { dash } = ratios;
  if (isEven) return { least: Math.max(2.3, 0.82 * dash), most: Math.min(4.2, 1.3 * dash) };
  return { least: Math.max(2.1, 0.74 * dash), most: Math.min(4.2, 1.35 * dash) };
}

function gapBoundsOf(isLetter: boolean, { ratios, isByHand }: HeardAt): Bounds {
  const { elementGap, letterGap } = ratios;
  if (isLetter) {
    if (!isByHand) return { least: 2.3, most: 4.2 };
    return { least: Math.max(2.2, 0.72 * letterGap), most: 1.45 * letterGap };
  }
  if (!isByHand) return { least: 0.45, most: 1.5 };
  return { least: 0.55 * elementGap, most: Math.min(1.75, 1.5 * elementGap) };
}

function areGapsRight(measured: readonly (MeasuredMark | null)[], heard: HeardAt): boolean {
  const isLetter = heard.patterns.flatMap((pattern) =>
    Array.from(pattern, (_, n) => n === pattern.length - 1),
  );
  return measured.slice(1).every((mark, n) => {
    const before = measured[n];
    if (mark === null || before === null || before === undefined) return true;
    if (Math.min(mark.ratio, before.ratio) < MEASURABLE) return true;
    const gap: number = mark.from - before.to;
    const bounds = inFrames(gapBoundsOf(isLetter[n] === true, heard), heard.dotFrames);
    const change = Math.max(mark.level, before.level) / Math.min(mark.level, before.level);
    const error = change > FADING ? FADING_ERROR * heard.dotFrames : GAP_ERROR;
    return gap >= bounds.least - error && gap <= bounds.most + error;
  });
}

function inFrames({ least, most }: Bounds, dotFrames: number): Bounds {
  return { least: least * dotFrames, most: most * dotFrames };
}
