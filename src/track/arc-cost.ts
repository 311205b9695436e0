import { turnDeg } from '../base/angle.ts';
import type { ArcAir } from './arc-air.ts';
import { groundNmPerS } from './arc-air.ts';
import type { Candidate } from './plan-cost.ts';
import { REACTION_S, TURN_RATE_DEG_PER_S } from './tuning.ts';

/** A stretch beyond the next reading that still counts, seconds. */
const TAIL_S = 20;
/** Least distance from the arc that is worth a turn, NM. */
const WORTH_NM = 0.1;

/** Where a way along the arc starts: place from the middle of the arc, NM, and the heading held. */
export interface ArcStart {
  readonly eastNm: number;
  readonly northNm: number;
  readonly headingDeg: number;
  readonly radiusNm: number;
  readonly air: ArcAir;
}

/** When a turn of this size told at 0 s has its effect, as if it were flown at once. */
export function effectiveS(turn: number): number {
  return REACTION_S + Math.abs(turn) / (2 * TURN_RATE_DEG_PER_S);
}

/** Points and weights of a three-point Gauss rule on 0 to 1. *Source:* any table of numerical integration. */
const GAUSS = [
  { at: 0.5 - Math.sqrt(0.15), weight: 5 / 18 },
  { at: 0.5, weight: 4 / 9 },
  { at: 0.5 + Math.sqrt(0.15), weight: 5 / 18 },
] as const;

/**
 * What a way along the arc costs: the squared distance from it until the next reading and a little beyond, and a
 * price for each change of heading that grows with its size. NM^2 s. The same measure as for a radial.
 */
export function arcCost(start: ArcStart, way: Candidate, horizonS: number): number {
  const endS = horizonS + TAIL_S;
  const price = WORTH_NM * WORTH_NM * endS;
  let { eastNm, northNm } = start;
  let cost = 0;
  let atS = 0;
  const fly = (headingDeg: number, untilS: number): void => {
    const stretchS = Math.max(0, Math.min(untilS, endS) - atS);
    const { east, north } = groundNmPerS(start.air, headingDeg);
    for (const { at, weight } of GAUSS) {
      const x = eastNm + east * at * stretchS;
      const y = northNm + north * at * stretchS;
      cost += weight * stretchS * (Math.hypot(x, y) - start.radiusNm) ** 2;
    }
    eastNm += east * stretchS;
    northNm += north * stretchS;
    atS += stretchS;
  };
  const firstTurn = turnDeg(start.headingDeg, way.headingDeg);
  if (Math.abs(firstTurn) > 0.5) {
    cost += price * (1 + Math.abs(firstTurn) / 60);
    fly(start.headingDeg, effectiveS(firstTurn));
  }
  if (way.second) {
    const secondTurn = turnDeg(way.headingDeg, way.second.headingDeg);
    cost += price * (0.6 + Math.abs(secondTurn) / 60);
    fly(way.headingDeg, way.second.atS + effectiveS(secondTurn));
    fly(way.second.headingDeg, endS);
  } else fly(way.headingDeg, endS);
  return cost;
}
