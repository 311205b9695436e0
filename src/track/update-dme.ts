import type { Belief, StateMean } from './belief.ts';
import { correct, correctMean, varianceAlong } from './correct.ts';
import type { Correction } from './correct.ts';
import { dot } from './matrix.ts';
import { vectorOf } from './mean-vector.ts';
import { placeOf } from './place.ts';
import type { DmeScene } from './scene.ts';
import { DME_SD_NM, DME_STEP_NM } from './tuning.ts';

/** Passes at most of the one-dimensional Gauss-Newton iteration about the slant range; near the station it takes some. */
const PASSES = 8;

/** A surprise that changes by less than this from pass to pass has settled. */
const SETTLED_NM = 0.001;

/** Variance of one DME reading, NM^2. */
const DME_NOISE_NM2 = DME_SD_NM ** 2 + DME_STEP_NM ** 2 / 12;

/** What the DME should show, NM, with its derivative by the state. */
export function dmeExpected(
  mean: StateMean,
  dme: DmeScene,
): { readonly slantNm: number; readonly slope: readonly number[] } {
  const { eastNm, northNm } = placeOf(mean);
  const fromEast = eastNm - dme.eastNm;
  const fromNorth = northNm - dme.northNm;
  const slantNm = Math.hypot(fromEast, fromNorth, dme.heightNm);
  const per = slantNm > 0 ? 1 / slantNm : 0;
  return {
    slantNm,
    slope: [
      (fromEast * eastNm + fromNorth * northNm) * per,
      (fromEast * northNm - fromNorth * eastNm) * per,
      0,
      0,
      0,
      0,
      0,
    ],
  };
}

/** What a DME reading says about the state, linearised where the state is. */
export function dmeCorrection(belief: Belief, dme: DmeScene, dmeNm: number): Correction {
  const { slantNm, slope } = dmeExpected(belief.mean, dme);
  return {
    slope,
    surprise: dmeNm - slantNm,
    variance: varianceAlong(belief, slope) + DME_NOISE_NM2,
    varianceLeft: 0,
  };
}

/**
 * The belief after a DME reading: linearised again at each improved range, as the range curves in its
 * logarithm (iterated extended Kalman update).
 *
 * *Source:* Bell, Cathey, The iterated Kalman filter update as a Gauss-Newton method, IEEE Trans. Automatic
 * Control 38 (1993) 294-297.
 */
export function updateDme(belief: Belief, dme: DmeScene, dmeNm: number): Belief {
  const start = vectorOf(belief.mean);
  let mean = belief.mean;
  let last = correctionAt(belief, start, mean, dme, dmeNm);
  for (let pass = 1; pass < PASSES; pass += 1) {
    mean = correctMean(belief, last);
    const next = correctionAt(belief, start, mean, dme, dmeNm);
    const isSettled = Math.abs(next.surprise - last.surprise) < SETTLED_NM;
    last = next;
    if (isSettled) break;
  }
  return correct(belief, last);
}

/** The correction of the start that a linearisation at another mean gives. */
function correctionAt(
  belief: Belief,
  start: readonly number[],
  mean: StateMean,
  dme: DmeScene,
  dmeNm: number,
): Correction {
  const { slantNm, slope } = dmeExpected(mean, dme);
  const away = vectorOf(mean).map((each, index) => (start[index] ?? 0) - each);
  return {
    slope,
    surprise: dmeNm - slantNm - dot(slope, away),
    variance: varianceAlong(belief, slope) + DME_NOISE_NM2,
    varianceLeft: 0,
  };
}
