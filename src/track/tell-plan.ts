import { DEG_PER_RAD, RAD_PER_DEG, wrap180 } from '../base/angle.ts';
import { planOnArc } from './arc-plan.ts';
import type { StateMean } from './belief.ts';
import { cadenceS } from './cadence.ts';
import { choosePlan } from './choose-plan.ts';
import { lineDegTrue } from './deviation.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import { clampLnRange } from './motion.ts';
import { bearingSdDeg, lnRangeSd } from './place.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { isSaturated } from './update-needle.ts';

/** A range better known than this (relative) is taken as it is. */
const RANGE_KNOWN_SD = 0.2;
/** Else so many standard deviations farther. */
const FARTHER_SD = 0.75;
/** A bearing better known than this is taken as it is; else no farther off the line than this. */
const BEARING_KNOWN_SD_DEG = 12;
const GREATEST_OFF_DEG = 15;
/** A needle that stays on its stop for so many readings asks for a steeper intercept. */
const LONG_ON_STOP = 3;
const GREATEST_OFF_LONG_DEG = 25;

/**
 * The headings that the pilot is told after the last reading.
 *
 * With a poorly known range they are chosen as if somewhat farther from the station than believed: too gentle a
 * correction loses the line for good, too strong a one shows on the needle at once. With the needle on its stop
 * likewise as if a standard deviation farther out: a steep intercept is put right as soon as the needle comes
 * alive. But a bearing that is hardly known leads to no steep intercept.
 */
export function tellPlan(estimate: Estimate): ToldPlan {
  const { belief, scene, headingDeg, hasPassed, overStation, readings } = estimate;
  const situation = {
    mean: meanToFlyFrom(estimate),
    presentHeadingDeg: headingDeg,
    horizonS: cadenceS(readings),
    holdsLine: hasPassed || overStation !== null,
  };
  return scene.arc
    ? planOnArc(belief.mean, situation, scene, scene.arc)
    : choosePlan(situation, scene);
}

function meanToFlyFrom(estimate: Estimate): StateMean {
  const { belief } = estimate;
  const { mean } = belief;
  const rangeSd = lnRangeSd(belief);
  const fartherLn = rangeSd > RANGE_KNOWN_SD ? FARTHER_SD * rangeSd : 0;
  return {
    ...mean,
    lnRange: clampLnRange(mean.lnRange + fartherLn),
    bearingRad: bearingToFlyFrom(estimate),
  };
}

function bearingToFlyFrom(estimate: Estimate): number {
  const { belief, scene, readings } = estimate;
  const sdDeg = bearingSdDeg(belief);
  if (sdDeg > BEARING_KNOWN_SD_DEG) return nearerBearing(estimate);
  const { bearingRad } = belief.mean;
  const last = readings.at(-1);
  if (!last || last.flag === 'off' || !isOnStop(last, scene)) return bearingRad;
  const outward = Math.sign(last.needleDots ?? 0) * (last.flag === 'to' ? 1 : -1);
  return bearingRad + outward * sdDeg * RAD_PER_DEG;
}

function isOnStop({ needleDots, station }: Reading, scene: Scene): boolean {
  return station === undefined && isSaturated(needleDots ?? 0, scene);
}

/** The bearing, brought nearer to the line where it is too far off to be acted on. */
function nearerBearing({ belief, scene, readings, openBearing }: Estimate): number {
  const { mean } = belief;
  const onLineDeg = lineDegTrue(mean, scene) + (scene.isTo ? 180 : 0);
  const offDeg = wrap180(mean.bearingRad * DEG_PER_RAD - onLineDeg);
  if (Math.abs(offDeg) > 90) return mean.bearingRad;
  const recent = readings.slice(-LONG_ON_STOP);
  const isLong = recent.length === LONG_ON_STOP && recent.every((each) => isOnStop(each, scene));
  const greatestDeg = isLong || openBearing ? GREATEST_OFF_LONG_DEG : GREATEST_OFF_DEG;
  const lessDeg = Math.max(0, Math.abs(offDeg) - greatestDeg);
  return mean.bearingRad - Math.sign(offDeg) * lessDeg * RAD_PER_DEG;
}
