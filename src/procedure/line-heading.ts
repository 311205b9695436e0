import { turnDeg } from '../base/angle.ts';
import { alongLine } from '../track/along-line.ts';
import type { AlongLine } from '../track/along-line.ts';
import { holdLine } from '../track/choose-plan.ts';
import type { Estimate } from '../track/estimate.ts';

/** Off the heading that keeps the line by this much, a heading leads back to it, degrees. */
const LEADS_BACK_DEG = 5;

/** The motion of the aircraft as seen from the line of the leg, after the last reading. */
export function lineMotion({ belief, scene }: Estimate): AlongLine {
  return alongLine(belief.mean, scene);
}

/**
 * The heading that keeps the line in the wind as far as it is known, as it is told: in steps of five degrees,
 * or the one that is flown where that is near enough. Magnetic.
 */
export function lineHeadingToFlyDeg(estimate: Estimate, presentHeadingDeg: number): number {
  return holdLine(lineMotion(estimate), presentHeadingDeg).headingDeg;
}

/** Whether a heading (magnetic) leads back to the line rather than along it. */
export function leadsBack(estimate: Estimate, headingDeg: number): boolean {
  const offDeg = Math.abs(turnDeg(lineMotion(estimate).lineHeadingDeg, headingDeg));
  return offDeg >= LEADS_BACK_DEG;
}
