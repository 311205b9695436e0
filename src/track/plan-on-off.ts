import { wholeHeadingDeg } from './choose-plan.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import { isOffTheCone } from './take-in.ts';

/**
 * With the flag OFF, and that not surely the cone: the heading held now is held, whatever was planned, until a
 * needle tells something again; null where that does not apply.
 */
export function planOnOff({ flag, belief, scene, headingDeg }: Estimate): ToldPlan | null {
  if (flag !== 'off' || headingDeg === null || isOffTheCone(belief, scene)) return null;
  const heldDeg = wholeHeadingDeg(headingDeg);
  return { headingDeg: heldDeg, holdS: null, thenHeadingDeg: heldDeg };
}
