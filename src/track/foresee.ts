import type { DatedLeg } from '../leg/leg-frame.ts';
import { arcNow } from './arc-guide.ts';
import { needleDeg, indicatedRadialDeg, pastAbeamDeg } from './deviation.ts';
import type { Belief } from './belief.ts';
import { wholeHeadingDeg } from './choose-plan.ts';
import type { Estimate } from './estimate-record.ts';
import type { Foresight } from './foresight.ts';
import { guide } from './guide.ts';
import { NOTHING_FAR, howFar } from './how-far.ts';
import { onwardTo } from './onward.ts';
import { isWithinReach } from './over-station.ts';
import { phaseOf } from './phase.ts';
import { bearingSdDeg, lnRangeSd } from './place.ts';
import { sceneOf } from './scene.ts';
import type { Scene } from './scene.ts';
import { trustIn, trustedFar } from './trust.ts';
import { dmeExpected } from './update-dme.ts';

/** A range less certain than this (relative) foresees no DME. */
const GREATEST_RANGE_SD = 0.35;
/** A bearing less certain than this foresees no needle. */
const GREATEST_BEARING_SD_DEG = 30;

/** The part of it that is read off the panel. */
type Panel = Pick<Foresight, 'needleDots' | 'flag' | 'dmeNm'>;

/** What the panel shows in a belief, with the OBS at a course. */
function panelIn(belief: Belief, scene: Scene, courseSetDeg: number): Panel {
  const isInCone = Math.exp(belief.mean.lnRange) < scene.coneRadiusNm;
  const flag = pastAbeamDeg(belief.mean, scene, courseSetDeg) > 0 ? 'from' : 'to';
  const full = scene.dotsFullScale;
  const radialDeg = indicatedRadialDeg(belief.mean, scene);
  const dots = needleDeg(radialDeg, courseSetDeg, flag) / scene.degreesPerDot;
  const isNeedleKnown = !isInCone && bearingSdDeg(belief) < GREATEST_BEARING_SD_DEG;
  const isRangeKnown = lnRangeSd(belief) < GREATEST_RANGE_SD;
  return {
    needleDots: isNeedleKnown ? Math.min(full, Math.max(-full, dots)) : null,
    flag: isInCone ? 'off' : flag,
    dmeNm: scene.dme && isRangeKnown ? dmeExpected(belief.mean, scene.dme).slantNm : null,
  };
}

/** On an arc the OBS is seldom near the radial: a needle on its stop is nothing to expect. */
function onArcPanel(panel: Panel, { dotsFullScale }: Scene): Panel {
  const isOnStop = Math.abs(panel.needleDots ?? 0) >= dotsFullScale;
  return isOnStop ? { ...panel, needleDots: null } : panel;
}

/**
 * What the panel should show at `atMs` if the last advice is flown until then, with the OBS left as it was
 * last read.
 */
export function foresee(estimate: Estimate, leg: DatedLeg, atMs: number): Foresight {
  const scene = sceneOf(leg, estimate.aircraft);
  const { belief, headingDeg, overStation } = onwardTo(estimate, atMs);
  const onward = {
    ...estimate,
    belief,
    overStation: isWithinReach(belief, scene) ? overStation : null,
  };
  const told = headingDeg ?? estimate.plan?.headingDeg ?? guide(estimate, leg).whichWay.headingDeg;
  const courseSetDeg = estimate.readings.at(-1)?.courseSetDeg ?? scene.courseDeg;
  const panel: Panel = estimate.isPlaced
    ? panelIn(belief, scene, courseSetDeg)
    : { needleDots: null, flag: leg.leg.direction, dmeNm: null };
  const trust = trustIn(estimate);
  if (scene.arc) {
    const { howFar: far, phase } = arcNow({ ...onward, headingDeg }, scene.arc);
    const howFar = trustedFar(far, trust);
    return { ...onArcPanel(panel, scene), headingDeg: wholeHeadingDeg(told), howFar, phase };
  }
  return {
    ...panel,
    headingDeg: wholeHeadingDeg(told),
    howFar: estimate.isPlaced
      ? trustedFar(howFar(belief, scene, estimate.hasPassed), trust)
      : NOTHING_FAR,
    phase: phaseOf(onward),
  };
}
