import { NOT_MOVED } from './air-path.ts';
import type { AirPath } from './air-path.ts';
import type { Belief } from './belief.ts';
import type { Estimate, OverStation } from './estimate-record.ts';
import { judge } from './judge.ts';
import { bearingSdDeg, lnRangeSd } from './place.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { IN_CONE_SD_DEG, withPlace } from './start-belief.ts';
import { updateDme } from './update-dme.ts';

/** The needle is of no use within so many cone radii: its edge is not sharp. Common practice, no source. */
const NEAR_CONE_RADII = 1.2;
/** Nor, however low, within this: there a step of the DME is as far as the station. Common practice, no source. */
const LEAST_NM = 0.5;
/** A bearing less certain than this was not known before the station either. */
const BEARING_UNKNOWN_SD_DEG = 45;

/** Nearer to the station than this, NM over ground, needle and flag tell nothing about the place. */
function stationReachNm({ coneRadiusNm }: Scene): number {
  return Math.max(LEAST_NM, NEAR_CONE_RADII * coneRadiusNm);
}

/**
 * Whether a reading is taken over the station, where needle and flag may show anything: by the DME and what is
 * believed (`carried`, to its time) together, or by the belief alone where the DME does not fit it. Never on a leg
 * without DME: there the flag is all that tells the passage (flag-side.ts).
 */
export function isOverStation(before: Estimate, carried: Belief, reading: Reading): boolean {
  const { scene } = before;
  if (!scene.dme) return false;
  // The other half of a reading of the same moment.
  if (before.overStation && reading.atMs === before.atMs) return true;
  const { dmeNm } = reading;
  const isDmeOfUse = dmeNm !== undefined && !judge(carried, scene, reading).dme;
  // With the bearing open the middle of what is believed may lie anywhere.
  if (before.openBearing && !isDmeOfUse) return false;
  const belief = isDmeOfUse ? updateDme(carried, scene.dme, dmeNm) : carried;
  return isWithinReach(belief, scene);
}

/** Whether a place is so near to the station that needle and flag tell nothing about it. */
export function isWithinReach({ mean }: Belief, scene: Scene): boolean {
  return Math.exp(mean.lnRange) < stationReachNm(scene);
}

/** The estimate as it stood before the station: readings over it have not moved what is believed. */
export function asBeforeStation(estimate: Estimate): Estimate {
  const { overStation } = estimate;
  return overStation ? { ...estimate, belief: overStation.belief } : estimate;
}

/** Whether the first reading of all was taken over the station, so that the place is still to be set. */
export function isBegunOverStation({ overStation }: Estimate): boolean {
  return overStation !== null && bearingSdDeg(overStation.belief) > BEARING_UNKNOWN_SD_DEG;
}

/**
 * What a first reading over the station leaves: a range by its DME, and any bearing; null where it was not taken
 * there. `place`: what that reading allows, before any of it is taken in.
 */
export function beganOverStation(
  place: Belief,
  scene: Scene,
  reading: Reading,
): OverStation | null {
  if (!scene.dme || reading.dmeNm === undefined || !isWithinReach(place, scene)) return null;
  const { lnRange, bearingRad } = place.mean;
  const sd = { lnRange: lnRangeSd(place), bearingDeg: IN_CONE_SD_DEG };
  const anyBearing = withPlace(place, { lnRange, bearingRad }, sd);
  return { belief: updateDme(anyBearing, scene.dme, reading.dmeNm), path: NOT_MOVED };
}

/** The way flown since the last reading that told something, with the next piece of it. */
export function pathSince(before: OverStation | null, next: AirPath): AirPath {
  if (!before) return next;
  const { path } = before;
  return {
    eastS: path.eastS + next.eastS,
    northS: path.northS + next.northS,
    durationS: path.durationS + next.durationS,
    endHeadingDeg: next.endHeadingDeg,
    turnChord: path.turnChord + next.turnChord,
  };
}
