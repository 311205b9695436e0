/** What a stretch of tone or quiet is taken for. */
export type Span = 'dot' | 'dash' | 'element-gap' | 'letter-gap';

/**
 * What is known of a hand's timing: mean and covariance of the logarithms of the dot's length (s) and of
 * dash, element gap and letter gap in dots. Mean first, then the covariance row by row.
 */
export type Timing = Float64Array;

const SIZE = 4;

/** Before anything is heard: dot of 8 words a minute, give or take; ratios as hands have them. */
const PRIOR_MEAN = [Math.log(1.2 / 8), Math.log(3.05), Math.log(1.05), Math.log(3.3)] as const;
const PRIOR_SPREAD = [0.4, 0.13, 0.15, 0.18] as const;

/** How far single marks stray (logarithm), and how exactly an edge can be placed, seconds. */
const STRAY = 0.1;
const EDGE_S = 0.005;

const OWN: Readonly<Record<Span, number>> = {
  dot: 0,
  dash: 1,
  'element-gap': 2,
  'letter-gap': 3,
};

/** Timing before anything is heard. *Source of the figures:* common practice, no source. */
export function unknownTiming(): Timing {
  const timing = new Float64Array(SIZE + SIZE * SIZE);
  for (let n = 0; n < SIZE; n += 1) {
    timing[n] = PRIOR_MEAN[n] ?? 0;
    timing[SIZE + n * (SIZE + 1)] = (PRIOR_SPREAD[n] ?? 0) ** 2;
  }
  return timing;
}

/** Length of a dot, seconds, as far as it is known. */
export function dotSOf(timing: Timing): number {
  return Math.exp(timing[0] ?? 0);
}

/** Lengths in dots. */
export interface Ratios {
  readonly dash: number;
  readonly elementGap: number;
  readonly letterGap: number;
}

/** Lengths in dots, as far as they are known. */
export function ratiosOf(timing: Timing): Ratios {
  return {
    dash: Math.exp(timing[1] ?? 0),
    elementGap: Math.exp(timing[2] ?? 0),
    letterGap: Math.exp(timing[3] ?? 0),
  };
}

/**
 * How likely a span of `durationS` is (log density over ln of the duration), and the timing learnt from it.
 *
 * *Source:* one step of a Kalman filter without movement, that is Bayesian linear regression (Bishop,
 * Pattern Recognition and Machine Learning, section 3.3; from memory). `learnt` is written in place.
 */
export function spanLogDensity(
  timing: Timing,
  span: Span,
  durationS: number,
  learnt: Timing,
): number {
  const own = OWN[span];
  const isDot = own === 0;
  const expected = (timing[0] ?? 0) + (isDot ? 0 : (timing[own] ?? 0));
  const miss = Math.log(durationS) - expected;
  const covariance = (row: number, column: number) => timing[SIZE + row * SIZE + column] ?? 0;
  const along = (row: number) => covariance(row, 0) + (isDot ? 0 : covariance(row, own));
  const chance = STRAY ** 2 + 2 * (EDGE_S / durationS) ** 2;
  const variance = along(0) + (isDot ? 0 : along(own)) + chance;
  for (let row = 0; row < SIZE; row += 1) {
    const gain = along(row) / variance;
    learnt[row] = (timing[row] ?? 0) + gain * miss;
    for (let column = 0; column < SIZE; column += 1) {
      learnt[SIZE + row * SIZE + column] = covariance(row, column) - gain * along(column);
    }
  }
  return -0.5 * (Math.log(2 * Math.PI * variance) + (miss * miss) / variance);
}
