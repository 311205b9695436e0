import { arcAirOf, headingAlongDeg, speedAlongKt } from './arc-air.ts';
import { howFarOnArc, slopeOf } from './arc-far.ts';
import { joinAhead } from './arc-join.ts';
import type { ArcJoin } from './arc-join.ts';
import { leadRadialsDeg } from './arc-lead.ts';
import { arcPlaceOf } from './arc-place.ts';
import type { ArcScene } from './arc-scene.ts';
import type { Belief } from './belief.ts';
import { wholeHeadingDeg } from './choose-plan.ts';
import { varianceAlong } from './correct.ts';
import type { Estimate } from './estimate-record.ts';
import type { ArcSeen, EstimateSeen, HowFar, Phase } from './guidance.ts';
import { GREATEST_RANGE_SD, NOTHING_FAR, howFar } from './how-far.ts';
import { phaseOf } from './phase.ts';
import { bearingSdDeg, lnRangeSd } from './place.ts';
import type { Scene } from './scene.ts';

/** Farther than this off the arc it is being intercepted again, NM. *Source:* FAA-H-8083-15B, p. 9-17 (1 NM). */
const OFF_ARC_NM = 1;
/** The radial comes near. */
const ARRIVING_NM = 2;
const ARRIVING_S = 60;
/** A bearing less certain than this is no picture. */
const GREATEST_BEARING_SD_DEG = 50;

/** Where the aircraft is on a leg that is an arc. */
export interface ArcNow {
  readonly join: ArcJoin | null;
  readonly isRangeKnown: boolean;
  readonly phase: Phase;
  readonly howFar: HowFar;
}

/**
 * Where an estimate is on its arc: before the turn onto it (`join`), or on it.
 *
 * How far is, before the turn, the distance along the radial to the turn; then along the arc to its radial.
 */
export function arcNow(estimate: Estimate, arc: ArcScene): ArcNow {
  const { belief, scene, isPlaced, headingDeg } = estimate;
  if (!isPlaced) {
    return { join: null, isRangeKnown: false, phase: 'intercept', howFar: NOTHING_FAR };
  }
  const isRangeKnown = lnRangeSd(belief) <= GREATEST_RANGE_SD;
  const join = joinAhead(belief.mean, scene, arc, headingDeg);
  if (join || !isRangeKnown) {
    const phase = phaseOf({ ...estimate, hasPassed: false });
    const isElsewhere = phase === 'lost' || phase === 'near-station' || phase === 'passage';
    return {
      join,
      isRangeKnown,
      phase: isElsewhere ? phase : 'intercept',
      howFar: join ? howFarToTurn(belief, scene, join) : NOTHING_FAR,
    };
  }
  const far = howFarOnArc(belief, scene, arc);
  return { join, isRangeKnown, phase: phaseOnArc(estimate, arc, far), howFar: far };
}

function howFarToTurn(belief: Belief, scene: Scene, join: ArcJoin): HowFar {
  // The same sum as on a radial that ends where the turn begins.
  const rangeNm = Math.exp(belief.mean.lnRange);
  const endGroundNm = Math.max(0, rangeNm + (scene.isTo ? -join.toTurnNm : join.toTurnNm));
  return howFar(belief, { ...scene, endGroundNm }, false);
}

function phaseOnArc({ belief, isLost }: Estimate, arc: ArcScene, far: HowFar): Phase {
  if (isLost || bearingSdDeg(belief) > GREATEST_BEARING_SD_DEG) return 'lost';
  if ((far.toGoNm ?? Infinity) < ARRIVING_NM || (far.toGoS ?? Infinity) < ARRIVING_S) {
    return 'arriving';
  }
  return Math.abs(arcPlaceOf(belief.mean, arc).outsideNm) > OFF_ARC_NM ? 'intercept' : 'track';
}

/** What the guidance of an arc says that a radial has not. */
export function arcSeenOf({ belief, scene }: Estimate, arc: ArcScene, now: ArcNow): ArcSeen {
  const place = arcPlaceOf(belief.mean, arc);
  const air = arcAirOf(belief.mean, scene);
  const endSpeedKt = speedAlongKt(air, place.alongDeg + arc.sense * Math.max(0, place.toGoDeg));
  const exit = { groundSpeedKt: endSpeedKt, dmeNm: arc.dmeNm };
  const onArc = now.isRangeKnown && now.join === null;
  const alongDeg = now.join?.alongDeg ?? place.alongDeg;
  const lead = {
    inbound: leadRadialsDeg({ ...exit, onto: 'inbound' }),
    outbound: leadRadialsDeg({ ...exit, onto: 'outbound' }),
    plain: leadRadialsDeg({ ...exit, onto: null }),
  };
  return {
    isJoining: !onArc,
    turnLeadNm: now.join?.leadNm ?? null,
    turnInS: now.join && now.isRangeKnown ? Math.max(0, now.join.toTellS) : null,
    turn: now.join?.turn ?? null,
    outsideNm: onArc ? place.outsideNm : null,
    tangentDeg: wholeHeadingDeg(alongDeg - air.toPlaneDeg),
    alongHeadingDeg: wholeHeadingDeg(headingAlongDeg(air, alongDeg)),
    leadRadialsDeg: lead,
    toRadialDeg: onArc ? place.toGoDeg : null,
  };
}

/** The distance off the arc as a distance off the track, right positive: outside is left when clockwise. */
export function seenOnArc(seen: EstimateSeen, belief: Belief, arc: ArcScene): EstimateSeen {
  if (seen.crossTrackNm === null) return seen;
  const offOf = (mean: Belief['mean']): number => -arc.sense * arcPlaceOf(mean, arc).outsideNm;
  return {
    ...seen,
    crossTrackNm: offOf(belief.mean),
    crossTrackSdNm: Math.sqrt(varianceAlong(belief, slopeOf(offOf, belief.mean))),
  };
}
