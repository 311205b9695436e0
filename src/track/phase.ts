import { DEG_PER_RAD } from '../base/angle.ts';
import { wayToEnd } from './along-leg.ts';
import { alongLine, lineSpeedKt } from './along-line.ts';
import type { AlongLine } from './along-line.ts';
import type { Belief } from './belief.ts';
import { isNearStation } from './choose-plan.ts';
import type { Estimate } from './estimate-record.ts';
import type { Phase } from './guidance.ts';
import { isRangeKnown } from './how-far.ts';
import { bearingSdDeg } from './place.ts';
import type { Scene } from './scene.ts';
import { isOffTheCone } from './take-in.ts';

/** Off the line by more than this, the leg is still (or again) being intercepted. Common practice, no source. */
const OFF_LINE_DEG = 3;
/** Nearer than this in NM it is not, whatever the angle. Common practice, no source. */
const OFF_LINE_NM = 0.15;
/** The end of a leg that does not end over a station comes near. Common practice, no source. */
const ARRIVING_NM = 2;
const ARRIVING_S = 60;
/** A bearing less certain than this is no picture: the flag alone gives 40 degrees. Common practice, no source. */
const GREATEST_BEARING_SD_DEG = 50;
/** Nor is one that only the DME's rate tells, without any needle read. Common practice, no source. */
const GREATEST_UNREAD_SD_DEG = 25;

function isArriving(belief: Belief, scene: Scene): boolean {
  if (scene.isTo && scene.endGroundNm === 0) return false;
  const motion = alongLine(belief.mean, scene);
  const end = wayToEnd(motion, scene);
  if (end === null || !isRangeKnown(belief)) return false;
  return end.toEndNm < Math.max(ARRIVING_NM, (lineSpeedKt(motion) * ARRIVING_S) / 3600);
}

/**
 * Where on the leg the aircraft seems to be.
 *
 * - `lost`: nothing fits, the place was just started afresh; or the bearing is not known to 50 degrees. Never on
 *   OFF, which tells nothing that could be lost, nor on the first reading.
 * - `passage`: the flag is OFF and the aircraft inside the cone, or has turned to FROM on a leg to the station.
 * - `near-station`: in the last 30 s to the station, or within 1.2 cone radii (or half a mile): the wind-corrected
 *   heading is held, the needle ignored.
 * - `arriving`: less than 2 NM or a minute to an end that is not over the station.
 * - `intercept`: more than 3 degrees (and 0.15 NM) off the line.
 * - `track`: on the line of a leg to the station; `outbound`: on the line of a leg from it.
 */
export function phaseOf(estimate: Estimate): Phase {
  const { belief, scene } = estimate;
  if (!estimate.isPlaced) return 'intercept';
  const overPhase = phaseOverStation(estimate);
  if (overPhase) return overPhase;
  const motion = alongLine(belief.mean, scene);
  const offPhase = estimate.flag === 'off' ? phaseWithOff(belief, scene, motion) : null;
  if (offPhase) return offPhase;
  const canBeLost = estimate.flag !== 'off' && estimate.readings.length > 1;
  if (estimate.isLost && canBeLost) return 'lost';
  if (isNearStation(motion, scene)) return 'near-station';
  if (isBearingUnknown(estimate)) return canBeLost ? 'lost' : 'intercept';
  return phaseOnLine(belief, scene, motion);
}

function isBearingUnknown({ belief, openBearing, readings }: Estimate): boolean {
  const isUnread = openBearing !== null && readings.at(-1)?.needleDots === undefined;
  return bearingSdDeg(belief) > (isUnread ? GREATEST_UNREAD_SD_DEG : GREATEST_BEARING_SD_DEG);
}

/** Past the station, or over it; null: neither, as far as the readings tell. */
function phaseOverStation({ hasPassed, overStation, flag }: Estimate): Phase | null {
  if (hasPassed) return 'passage';
  if (!overStation) return null;
  return flag === 'off' ? 'passage' : 'near-station';
}

/** OFF inside the cone is over the station; where it can be the cone's edge, near it; else it tells nothing. */
function phaseWithOff(belief: Belief, scene: Scene, { rangeNm }: AlongLine): Phase | null {
  if (!isOffTheCone(belief, scene)) return null;
  return rangeNm < scene.coneRadiusNm ? 'passage' : 'near-station';
}

function phaseOnLine(belief: Belief, scene: Scene, motion: AlongLine): Phase {
  if (isArriving(belief, scene)) return 'arriving';
  const offDeg = Math.abs(Math.asin(clampUnit(motion.crossTrackNm / motion.rangeNm))) * DEG_PER_RAD;
  if (offDeg > OFF_LINE_DEG && Math.abs(motion.crossTrackNm) > OFF_LINE_NM) return 'intercept';
  return scene.isTo ? 'track' : 'outbound';
}

function clampUnit(value: number): number {
  return Math.min(1, Math.max(-1, value));
}
