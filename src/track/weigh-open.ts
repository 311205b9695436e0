import { correct } from './correct.ts';
import { indicatedRadialDeg, needleDeg, radialSdDeg } from './deviation.ts';
import { likelihoodOf } from './likelihood.ts';
import { normalBelow, normalDensity } from './normal.ts';
import type { Piece } from './range-pieces.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { isSaturated, needleCorrection, saturationDeg } from './update-needle.ts';

const ABEAM_DEG = 90;
/** How sharply the flag turns abeam, degrees. Common practice, no source. */
const FLAG_TURNS_SD_DEG = 3;
/** Pieces of less than this part of the whole are left out. */
const LEAST_SHARE = 1e-5;
/** Needle and flag less likely than this (the needle per degree) contradict everything that is open. */
const LEAST_LIKELY = 1e-4;

/**
 * The pieces of an open bearing (carried on to a reading) after it, weighed by how likely it was for each, in all 1;
 * null where needle and flag contradict every one of them.
 *
 * `isDmeOut`: the DME is left out.
 * *Source:* Sorenson, Alspach, Recursive Bayesian estimation using Gaussian sums, Automatica 7 (1971) 465-479.
 */
export function openPiecesAfter(
  pieces: readonly Piece[],
  scene: Scene,
  reading: Reading,
  isDmeOut: boolean,
): readonly Piece[] | null {
  const byDme = isDmeOut ? pieces : pieces.map((piece) => afterDme(piece, scene, reading));
  const after = inAllOne(byDme).map((piece) => afterNeedle(piece, scene, reading));
  const all = weightOf(after);
  if (!(all > LEAST_LIKELY)) return null;
  return inAllOne(after.filter(({ weight }) => weight > LEAST_SHARE * all));
}

function weightOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { weight }) => sum + weight, 0);
}

function inAllOne(pieces: readonly Piece[]): readonly Piece[] {
  const all = weightOf(pieces);
  return pieces.map(({ belief, weight }) => ({ belief, weight: weight / all }));
}

function afterDme({ belief, weight }: Piece, scene: Scene, reading: Reading): Piece {
  const { lnDme, givenDme } = likelihoodOf(belief, scene, reading);
  return { belief: givenDme, weight: weight * Math.exp(lnDme) };
}

function afterNeedle({ belief, weight }: Piece, scene: Scene, reading: Reading): Piece {
  const { flag, needleDots, courseSetDeg } = reading;
  if (flag === 'off') return { belief, weight };
  const expectedDeg = needleDeg(indicatedRadialDeg(belief.mean, scene), courseSetDeg, flag);
  const flagSd = Math.hypot(radialSdDeg(belief), FLAG_TURNS_SD_DEG);
  const byFlag = weight * normalBelow((ABEAM_DEG - Math.abs(expectedDeg)) / flagSd);
  const needle = needleDots === undefined ? null : { flag, needleDots, courseSetDeg };
  const correction = needle && needleCorrection(belief, scene, needle);
  // Deep on its stop, as expected, the needle corrects nothing.
  if (!needle || !correction) return { belief, weight: byFlag };
  const sd = Math.sqrt(correction.variance);
  const beyondDeg = Math.sign(needle.needleDots) * expectedDeg - saturationDeg(scene);
  const likely = isSaturated(needle.needleDots, scene)
    ? normalBelow(beyondDeg / sd)
    : normalDensity(correction.surprise / sd) / sd;
  return { belief: correct(belief, correction), weight: byFlag * likely };
}
