import type { AlongLine } from './along-line.ts';
import { LN_RANGE, BEARING, STATE_SIZE } from './belief.ts';
import type { Scene } from './scene.ts';

/** Where a leg's end lies ahead, NM, negative behind; and the derivative of that by the state. */
export interface ToEnd {
  readonly toEndNm: number;
  readonly slope: readonly number[];
}

/**
 * The way to the end of a leg, NM, negative once it is past; null where no end is known.
 *
 * Towards the station it is the range, as the DME counts it; once the station is abeam, and on a leg from it, it
 * is counted along the line of the leg: with the station still ahead of an outbound leg that is the way to it and
 * on to the end.
 */
export function wayToEnd(motion: AlongLine, scene: Scene): ToEnd | null {
  const { endGroundNm, isTo } = scene;
  if (endGroundNm === null) return null;
  const { rangeNm, crossTrackNm, pastStationNm } = motion;
  const slope = new Array<number>(STATE_SIZE).fill(0);
  if (isTo && pastStationNm < 0) {
    slope[LN_RANGE] = rangeNm;
    return { toEndNm: rangeNm - endGroundNm, slope };
  }
  slope[LN_RANGE] = -pastStationNm;
  slope[BEARING] = crossTrackNm;
  const endAlongNm = isTo ? -endGroundNm : endGroundNm;
  return { toEndNm: endAlongNm - pastStationNm, slope };
}
