import { turnDeg } from '../base/angle.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import { alongLine } from './along-line.ts';
import { arcNextReadingInS, arcQuestion } from './arc-ask.ts';
import { arcNow, arcSeenOf, seenOnArc } from './arc-guide.ts';
import type { ArcScene } from './arc-scene.ts';
import { wholeHeadingDeg } from './choose-plan.ts';
import type { Estimate, ToldPlan } from './estimate-record.ts';
import type { EstimateSeen, Guidance, WhichWay } from './guidance.ts';
import { NOTHING_FAR, howFar } from './how-far.ts';
import { nextReadingInS, readBeforeEndS } from './next-reading.ts';
import { phaseOf } from './phase.ts';
import { nextQuestion } from './question.ts';
import { reverseCause } from './reverse-sensing.ts';
import { sceneOf } from './scene.ts';
import { seenOf } from './seen.ts';
import { isLineLost, trustIn, trustedFar, trustedSeen } from './trust.ts';

const NOTHING_SEEN: EstimateSeen = {
  crossTrackNm: null,
  crossTrackSdNm: null,
  driftDeg: null,
  wind: null,
};

/** How far, which way and what to ask next, from what the readings have shown so far. */
export function guide(estimate: Estimate, leg: DatedLeg): Guidance {
  const scene = sceneOf(leg, estimate.aircraft);
  if (scene.arc) return guideOnArc(estimate, scene.arc);
  const plan = estimate.plan ?? planWithoutPlace(estimate);
  const { belief, isPlaced } = estimate;
  const reverseSensing = reverseCause(estimate);
  const trust = trustIn(estimate);
  const far = isPlaced ? trustedFar(howFar(belief, scene, estimate.hasPassed), trust) : NOTHING_FAR;
  const nextS = readBeforeEndS(nextReadingInS(estimate), far.toGoS);
  const seen = isPlaced ? trustedSeen(seenOf(belief, scene, plan.headingDeg), trust) : NOTHING_SEEN;
  return {
    phase: phaseOf(estimate),
    howFar: far,
    whichWay: whichWay(estimate, plan, nextS),
    seen,
    nextQuestion: nextQuestion(estimate),
    nextReadingInS: nextS,
    isWindTooStrong: isLineLost(estimate, seen),
    ...(reverseSensing ? { reverseSensing } : {}),
  };
}

/** The same for a leg that is an arc. */
function guideOnArc(estimate: Estimate, arc: ArcScene): Guidance {
  const plan = estimate.plan ?? planWithoutPlace(estimate);
  const { belief, isPlaced, scene } = estimate;
  const now = arcNow(estimate, arc);
  const onLine = isPlaced ? seenOf(belief, scene, plan.headingDeg) : NOTHING_SEEN;
  const isOnArc = isPlaced && now.isRangeKnown && now.join === null;
  const trust = trustIn(estimate);
  const seen = trustedSeen(isOnArc ? seenOnArc(onLine, belief, arc) : onLine, trust);
  const nextS = arcNextReadingInS(estimate, arc, now, seen);
  return {
    phase: now.phase,
    howFar: trustedFar(now.howFar, trust),
    whichWay: whichWay(estimate, plan, nextS),
    seen,
    nextQuestion: arcQuestion(estimate, now),
    nextReadingInS: nextS,
    ...(isPlaced ? { arc: arcSeenOf(estimate, arc, now) } : {}),
  };
}

/** Before the place is known: the heading along the course, corrected for the wind forecast at the station. */
function planWithoutPlace({ belief, scene }: Estimate): ToldPlan {
  const headingDeg = wholeHeadingDeg(alongLine(belief.mean, scene).lineHeadingDeg);
  return { headingDeg, holdS: null, thenHeadingDeg: headingDeg };
}

function whichWay(estimate: Estimate, plan: ToldPlan, nextS: number): WhichWay {
  const isReadBelieved = estimate.headingDoubtDeg === null;
  const lastRead =
    (isReadBelieved ? estimate.readings.at(-1)?.headingDeg : null) ?? estimate.headingDeg;
  const turn = Math.round(turnDeg(lastRead ?? plan.headingDeg, plan.headingDeg));
  return {
    turn: turn === 0 ? 'none' : turn > 0 ? 'right' : 'left',
    turnDeg: Math.abs(turn),
    headingDeg: plan.headingDeg,
    holdS: plan.holdS ?? nextS,
    thenHeadingDeg: plan.thenHeadingDeg,
  };
}
