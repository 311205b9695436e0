import { S_PER_H } from '../base/units.ts';
import { arcAirOf, speedAlongKt, timeAlongArcS } from './arc-air.ts';
import { arcPlaceOf } from './arc-place.ts';
import type { ArcScene } from './arc-scene.ts';
import type { Belief, StateMean } from './belief.ts';
import { varianceAlong } from './correct.ts';
import type { HowFar } from './guidance.ts';
import {
  GREATEST_RANGE_SD,
  GREATEST_SPEED_SD_KT,
  NOTHING_FAR,
  isTimeTold,
  timeSdS,
} from './how-far.ts';
import { meanOf, vectorOf } from './mean-vector.ts';
import { lnRangeSd } from './place.ts';
import type { Scene } from './scene.ts';

/** Small changes of the state by which slopes are taken, in the order of the state. */
const STEPS = [1e-4, 1e-4, 0.1, 0.1, 0.01, 0.1, 0.01] as const;

/** Derivative of a number by the state, by central differences. */
export function slopeOf(of: (mean: StateMean) => number, mean: StateMean): readonly number[] {
  const vector = vectorOf(mean);
  return STEPS.map((step, index) => {
    const moved = (by: number): StateMean =>
      meanOf(vector.map((each, at) => (at === index ? each + by : each)));
    return (of(moved(step)) - of(moved(-step))) / (2 * step);
  });
}

/**
 * Distance and time along the arc to the radial where it ends, and the groundspeed along it now, each with its
 * standard deviation; null where the readings do not show it. Past the radial: 0.
 *
 * The time counts the groundspeed all the way round, in a wind that stays.
 */
export function howFarOnArc(belief: Belief, scene: Scene, arc: ArcScene): HowFar {
  const { mean } = belief;
  if (lnRangeSd(belief) > GREATEST_RANGE_SD) return NOTHING_FAR;
  const place = arcPlaceOf(mean, arc);
  const varianceOf = (of: (at: StateMean) => number): number =>
    varianceAlong(belief, slopeOf(of, mean));
  const toGoNm = Math.max(0, place.toGoNm);
  const pastEndNm = place.toGoNm < 0 ? -place.toGoNm : null;
  const sdNm = Math.sqrt(varianceOf((at) => arcPlaceOf(at, arc).toGoNm));
  const speedNow = (at: StateMean): number =>
    speedAlongKt(arcAirOf(at, scene), arcPlaceOf(at, arc).alongDeg);
  const sdKt = Math.sqrt(varianceOf(speedNow));
  if (sdKt > GREATEST_SPEED_SD_KT) return { ...NOTHING_FAR, toGoNm, pastEndNm, sdNm };
  const timeLeft = (at: StateMean): number => {
    const there = arcPlaceOf(at, arc);
    return timeAlongArcS(arcAirOf(at, scene), there, arc, there.toGoDeg);
  };
  const toGoS = timeLeft(mean);
  const meanSpeedKt = toGoS > 0 ? (toGoNm * S_PER_H) / toGoS : speedNow(mean);
  const sdS = timeSdS(varianceOf(timeLeft), toGoS, meanSpeedKt);
  const isTold = isTimeTold(sdS, toGoS);
  return {
    toGoNm,
    pastEndNm,
    sdNm,
    groundSpeedKt: speedNow(mean),
    sdKt,
    toGoS: isTold ? toGoS : null,
    sdS: isTold ? sdS : null,
  };
}
