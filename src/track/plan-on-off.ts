import { turnDeg } from '../base/angle.ts';
import { MS_PER_S } from '../base/units.ts';
import { wholeHeadingDeg } from './choose-plan.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import { isOffTheCone } from './take-in.ts';
import { FOLLOWS_ADVICE_DEG } from './tuning.ts';

/**
 * With the flag OFF, and that not surely the cone: nothing new is chosen until a needle tells something again. The
 * heading held is held, and a turn that was told for later stands: it ends an intercept, which would go on through
 * the line without it. Null where that does not apply.
 */
export function planOnOff(estimate: Estimate): ToldPlan | null {
  const { flag, belief, scene, headingDeg } = estimate;
  if (flag !== 'off' || headingDeg === null || isOffTheCone(belief, scene)) return null;
  const heldDeg = wholeHeadingDeg(headingDeg);
  const held = { headingDeg: heldDeg, holdS: null, thenHeadingDeg: heldDeg };
  return turnStillTold(estimate, heldDeg) ?? held;
}

/** What is left of the plan told before: its second heading, at the time told; null where it had none or is not flown. */
function turnStillTold(
  { plan, readings, start, atMs }: Estimate,
  heldDeg: number,
): ToldPlan | null {
  const toldAtMs = readings.at(-2)?.atMs ?? start.atMs;
  if (plan?.holdS == null || toldAtMs === null || atMs === null) return null;
  const { thenHeadingDeg } = plan;
  const leftS = plan.holdS - (atMs - toldAtMs) / MS_PER_S;
  if (leftS <= 0) return { headingDeg: thenHeadingDeg, holdS: null, thenHeadingDeg };
  const isFlown = Math.abs(turnDeg(heldDeg, plan.headingDeg)) <= FOLLOWS_ADVICE_DEG;
  return isFlown ? { headingDeg: heldDeg, holdS: leftS, thenHeadingDeg } : null;
}
