import type { DatedLeg } from '../leg/leg-frame.ts';
import { needleDeg, indicatedRadialDeg, pastAbeamDeg } from './deviation.ts';
import { wholeHeadingDeg } from './choose-plan.ts';
import type { Estimate } from './estimate-record.ts';
import type { Foresight } from './foresight.ts';
import { NOTHING_FAR, howFar } from './how-far.ts';
import { onwardTo } from './onward.ts';
import { phaseOf } from './phase.ts';
import { bearingSdDeg, lnRangeSd } from './place.ts';
import { sceneOf } from './scene.ts';
import { dmeExpected } from './update-dme.ts';

/** A range less certain than this (relative) foresees no DME. */
const GREATEST_RANGE_SD = 0.35;
/** A bearing less certain than this foresees no needle. */
const GREATEST_BEARING_SD_DEG = 30;

/**
 * What the panel should show at `atMs` if the last advice is flown until then, with the OBS left as it was
 * last read.
 */
export function foresee(estimate: Estimate, leg: DatedLeg, atMs: number): Foresight {
  const scene = sceneOf(leg, estimate.aircraft);
  const { belief, headingDeg } = onwardTo(estimate, atMs);
  const onward = { ...estimate, belief };
  const courseSetDeg = estimate.readings.at(-1)?.courseSetDeg ?? scene.courseDeg;
  const isInCone = estimate.isPlaced && Math.exp(belief.mean.lnRange) < scene.coneRadiusNm;
  const pastDeg = pastAbeamDeg(belief.mean, scene, courseSetDeg);
  const geometric = pastDeg > 0 ? 'from' : 'to';
  const flag = estimate.isPlaced ? geometric : leg.leg.direction;
  const isNeedleKnown =
    estimate.isPlaced && !isInCone && bearingSdDeg(belief) < GREATEST_BEARING_SD_DEG;
  const full = scene.dotsFullScale;
  const dots =
    needleDeg(indicatedRadialDeg(belief.mean, scene), courseSetDeg, flag) / scene.degreesPerDot;
  const isRangeKnown = estimate.isPlaced && lnRangeSd(belief) < GREATEST_RANGE_SD;
  return {
    headingDeg: wholeHeadingDeg(headingDeg ?? estimate.plan?.headingDeg ?? scene.courseDeg),
    needleDots: isNeedleKnown ? Math.min(full, Math.max(-full, dots)) : null,
    flag: isInCone ? 'off' : flag,
    dmeNm: scene.dme && isRangeKnown ? dmeExpected(belief.mean, scene.dme).slantNm : null,
    howFar: estimate.isPlaced ? howFar(belief, scene, estimate.hasPassed) : NOTHING_FAR,
    phase: phaseOf(onward),
  };
}
