import { alongLine, isWindTooStrong } from './along-line.ts';
import type { Estimate } from './estimate-record.ts';
import type { EstimateSeen, HowFar } from './guidance.ts';
import { NOTHING_FAR } from './how-far.ts';
import { isFromUnproven } from './passed.ts';
import { isStationBehind } from './station-behind.ts';
import { GREATEST_WIND_SD_KT, worseWindSdKt } from './seen.ts';
import { bearingSdDeg } from './place.ts';
import { greatestWeight } from './watch-record.ts';

/** What may be told while some doubts stand. The tracking goes on all the same. */
export interface Trust {
  /** Wind and drift. */
  readonly air: boolean;
  /** Groundspeed and time. */
  readonly speed: boolean;
  /** Distance to go and off course. */
  readonly distance: boolean;
  /** Off course, as far as the bearing tells it. */
  readonly across: boolean;
}

/**
 * Weights at which a suspicion is strong enough for nothing to be told that rests on the instrument, though not
 * yet strong enough for an alert (see monitor.ts). Tuned by simulation (tests/bench/track-faults.ts).
 */
const SUSPECT_DME = 3;
const SUSPECT_NEEDLE = 4;
/** So many readings in a row with a DME that does not fit leave the distance open. Common practice, no source. */
const DOUBTS_DISTANCE = 2;
/** With no needle read off its stop yet, a bearing that the DME's rate tells no better than so. Common practice, no source. */
const OPEN_BEARING_SD_DEG = 10;
/** A wind above this part of the airspeed must show in more than one interval. Common practice, no source. */
const STRONG_WIND = 0.5;
const ONE_INTERVAL = 2;

/** Whether the DME is suspected, or known, to tell a wrong distance. */
function isDmeDoubted({ doubt, jump, watch }: Estimate): boolean {
  if (watch.stuckDme.weight >= SUSPECT_DME || jump?.misfit.dme === true) return true;
  return doubt?.misfit.dme === true && doubt.count >= DOUBTS_DISTANCE;
}

/** Whether the needle is suspected to be stuck, or to work backwards. */
function isNeedleDoubted({ watch }: Estimate): boolean {
  if (watch.stuckNeedle.weight >= SUSPECT_NEEDLE) return true;
  return greatestWeight(watch.reversed, 1) >= SUSPECT_NEEDLE;
}

/** A strong wind that no forecast told and that one interval alone shows: more likely a slip. */
function isWindHasty({ belief, start, scene, takenIn }: Estimate): boolean {
  if (takenIn > ONE_INTERVAL || worseWindSdKt(start.belief) <= GREATEST_WIND_SD_KT) return false;
  const { windEastKt, windNorthKt } = belief.mean;
  return Math.hypot(windEastKt, windNorthKt) > STRONG_WIND * scene.trueAirspeedKt;
}

/** Whether FROM is read on a leg to a station that nothing shows to be behind. */
function isSideOpen(estimate: Estimate): boolean {
  return isFromUnproven(estimate) && !isStationBehind(estimate);
}

/** Whether the bearing has only been told by a side, and by how the DME moves. */
function isBearingOpen({ openBearing, belief }: Estimate): boolean {
  return openBearing !== null && bearingSdDeg(belief) > OPEN_BEARING_SD_DEG;
}

/**
 * Which results may be told.
 *
 * No wind, drift, groundspeed or time while any reading is in doubt, while the DME or the needle may be stuck, while
 * the place was just given up, or while a strong wind rests on one interval. A needle that may be stuck leaves the
 * groundspeed that the DME itself shows. No distance while the DME is doubted (a slip is forgiven once), while
 * nothing fits, or while FROM is read on a leg to a station that nobody has passed. No distance off course while the needle
 * has only been on its stop and the DME does not tell the bearing either.
 */
export function trustIn(estimate: Estimate): Trust {
  const { doubt, jump, isLost } = estimate;
  const isDmeBad = isDmeDoubted(estimate);
  const isNeedleBad = isNeedleDoubted(estimate);
  const isReadingBad = doubt !== null || jump !== null || isLost;
  const isAirBad = isDmeBad || isReadingBad || isWindHasty(estimate);
  return {
    air: !(isAirBad || isNeedleBad),
    speed: !(isAirBad || (isNeedleBad && estimate.scene.dme === null)),
    distance: !(isDmeBad || isLost || isSideOpen(estimate)),
    across: !isBearingOpen(estimate),
  };
}

/** How far, without what may not be told. */
export function trustedFar(far: HowFar, { speed, distance }: Trust): HowFar {
  const { toGoNm, pastEndNm, sdNm, groundSpeedKt, sdKt } = far;
  const where = distance ? { toGoNm, pastEndNm, sdNm } : {};
  if (!speed) return { ...NOTHING_FAR, ...where };
  return distance ? far : { ...NOTHING_FAR, groundSpeedKt, sdKt };
}

/** What is seen, without what may not be told. */
export function trustedSeen(seen: EstimateSeen, { air, distance, across }: Trust): EstimateSeen {
  return {
    ...seen,
    ...(air ? {} : { driftDeg: null, wind: null }),
    ...(distance && across ? {} : { crossTrackNm: null, crossTrackSdNm: null }),
  };
}

/** Whether a wind that is told (`seen`) leaves no way along the line. */
export function isLineLost({ belief, scene }: Estimate, seen: EstimateSeen): boolean {
  return seen.wind !== null && isWindTooStrong(alongLine(belief.mean, scene));
}
