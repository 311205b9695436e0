import type { Estimate } from './estimate-record.ts';
import { isAlongCourse } from './passage.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { coneReachNm } from './take-in.ts';

/** Whether the DME shows the aircraft so close that the flag may turn at any moment. */
function isAtStation(scene: Scene, { dmeNm }: Reading): boolean {
  return dmeNm !== undefined && dmeNm <= Math.hypot(coneReachNm(scene), scene.heightNm);
}

/**
 * Whether a FROM on a leg to the station can be the passage: a TO was read on this leg before, or the DME shows
 * the station close by, or the leg began with a known place (which the flag does not contradict).
 */
function isPassageProven(before: Estimate, reading: Reading): boolean {
  return before.lastToAtMs !== null || before.start.isPlaced || isAtStation(before.scene, reading);
}

/** What the flag tells about having passed the station; a later TO takes a passage back. */
export function withFlag(
  before: Estimate,
  reading: Reading,
  isContradicting: boolean,
): Pick<Estimate, 'flag' | 'lastToAtMs' | 'hasPassed'> {
  const { scene, lastToAtMs, hasPassed } = before;
  const { flag } = reading;
  if (flag === 'off' || !isAlongCourse(scene, reading)) return { flag, lastToAtMs, hasPassed };
  if (flag === 'to') return { flag, lastToAtMs: reading.atMs, hasPassed: false };
  const isPassage = scene.isTo && !isContradicting && isPassageProven(before, reading);
  return { flag, lastToAtMs, hasPassed: hasPassed || isPassage };
}

/**
 * Whether the last reading shows FROM with the course set on a leg to the station, and nothing tells that the
 * station was passed: the OBS or the flag was read wrongly, or the aircraft is on the other side.
 */
export function isFromUnproven({ scene, readings, hasPassed }: Estimate): boolean {
  const last = readings.at(-1);
  if (!scene.isTo || hasPassed || !last || last.station) return false;
  return last.flag === 'from' && isAlongCourse(scene, last);
}
