import { BEARING, STATE_SIZE } from './belief.ts';
import type { Belief } from './belief.ts';
import { lessOuter } from './matrix.ts';
import { meanOf, vectorOf } from './mean-vector.ts';
import { lnRangeSd } from './place.ts';

/** A belief that counts for a part of the whole. */
export interface Piece {
  readonly belief: Belief;
  readonly weight: number;
}

/** Standard deviation of a piece, as a part of the range, where they need not be too many. Tuned by simulation. */
const PIECE_SD_LN = 0.15;
/** The pieces reach so many standard deviations to either side, in at most so many steps. */
const REACH_SD = 3;
const MOST_STEPS = 10;
/** Pieces of less weight in all than this are nothing to go by. */
const LEAST_WEIGHT = 1e-12;

/**
 * A belief cut along the logarithm of the range into narrow ones that add up to it; what else it holds goes with the
 * range as it did. `weight`: of all of them together.
 *
 * *Source:* Sorenson, Alspach, Recursive Bayesian estimation using Gaussian sums, Automatica 7 (1971) 465-479.
 */
export function cutByRange(belief: Belief, weight: number): readonly Piece[] {
  const sd = lnRangeSd(belief);
  const steps = Math.min(MOST_STEPS, Math.ceil((REACH_SD * sd) / PIECE_SD_LN));
  const step = (REACH_SD * sd) / steps;
  // Pieces as wide as they lie apart make a smooth whole, and with the spread of their middles that of the belief.
  const middlesVariance = sd ** 2 - step ** 2;
  if (!(middlesVariance > 0)) return [{ belief, weight }];
  const slope = belief.covariance.slice(0, STATE_SIZE).map((each) => each / sd ** 2);
  const covariance = lessOuter(belief.covariance, slope, middlesVariance);
  const middle = vectorOf(belief.mean);
  const aways = Array.from({ length: 2 * steps + 1 }, (_, index) => (index - steps) * step);
  const shares = aways.map((away) => Math.exp((-0.5 * away ** 2) / middlesVariance));
  const all = shares.reduce((sum, each) => sum + each, 0);
  return aways.map((away, index) => ({
    belief: { mean: meanOf(middle.map((each, at) => each + (slope[at] ?? 0) * away)), covariance },
    weight: (weight * (shares[index] ?? 0)) / all,
  }));
}

/** The one belief with the mean and the spread of all pieces; null where hardly anything is left of them. */
export function joined(pieces: readonly Piece[]): Belief | null {
  const all = pieces.reduce((sum, { weight }) => sum + weight, 0);
  const heaviest = pieces.reduce<Piece | null>(
    (best, each) => (best && best.weight >= each.weight ? best : each),
    null,
  );
  if (!heaviest || !(all > LEAST_WEIGHT)) return null;
  const vectors = pieces.map(({ belief }) => nearTurn(belief, heaviest.belief));
  const mean = new Array<number>(STATE_SIZE).fill(0);
  pieces.forEach(({ weight }, index) => {
    vectors[index]?.forEach((each, at) => {
      mean[at] = (mean[at] ?? 0) + (weight / all) * each;
    });
  });
  const covariance = new Array<number>(STATE_SIZE * STATE_SIZE).fill(0);
  pieces.forEach(({ belief, weight }, index) => {
    const away = mean.map((each, at) => (vectors[index]?.[at] ?? 0) - each);
    for (let at = 0; at < covariance.length; at += 1) {
      const apart = (away[Math.floor(at / STATE_SIZE)] ?? 0) * (away[at % STATE_SIZE] ?? 0);
      covariance[at] =
        (covariance[at] ?? 0) + (weight / all) * ((belief.covariance[at] ?? 0) + apart);
    }
  });
  return { mean: meanOf(mean), covariance };
}

/** The mean of a belief with its bearing counted in the same turn as that of another: the station is passed on either side. */
function nearTurn({ mean }: Belief, other: Belief): number[] {
  const vector = vectorOf(mean);
  const turns = Math.round((mean.bearingRad - other.mean.bearingRad) / (2 * Math.PI));
  vector[BEARING] = mean.bearingRad - 2 * Math.PI * turns;
  return vector;
}
