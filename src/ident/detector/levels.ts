import type { Frames } from './frames.ts';
import type { Level } from './letter-tables.ts';
import { markSums } from './mark-sums.ts';

/** The share of weak marks before it is known how much levels vary. */
const USUAL_SPREAD = 0.25;

/** Even where levels hardly vary a mark may be weak now and then. */
const LEAST_WEAK = 5e-4;

/** So much variance nine marks show by chance. */
const BY_CHANCE = 0.006;

/**
 * The levels at which marks may come beside that of their neighbourhood: nearly all at full level,
 * weaker ones where levels vary. `spread`: how much they vary (nepers); left out: not known yet.
 */
export function levelsFor(
  frames: Frames,
  amplitude: Float64Array,
  spread: number = USUAL_SPREAD,
): Level[] {
  const weak = Math.min(0.15, LEAST_WEAK + Math.max(0, spread * spread - BY_CHANCE));
  return [
    { scale: 1, share: 1 - weak - weak / 40 },
    { scale: 0.55, share: weak },
    { scale: 0.3, share: weak / 40 },
  ].map(({ scale, share }) => ({
    sums: markSums(frames, amplitude, scale),
    logPrior: Math.log(share),
  }));
}
