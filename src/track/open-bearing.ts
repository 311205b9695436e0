import { RAD_PER_DEG } from '../base/angle.ts';
import type { Belief } from './belief.ts';
import { FITS } from './judge.ts';
import { normalBelow } from './normal.ts';
import { isAlongCourse } from './passage.ts';
import type { Piece } from './range-pieces.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { lnRangeSd } from './place.ts';
import {
  FLAG_ONLY_SD_DEG,
  NO_BEARING_SD_DEG,
  centredBearingDeg,
  isInConeAtStart,
  placeFromReading,
  withPlace,
} from './start-belief.ts';
import { takeIn } from './take-in.ts';
import { isOnStop, saturationDeg } from './update-needle.ts';

/** How far off the line aircraft are that begin on the leg's side of the station, one sd. Common practice, no source. */
const OFF_LINE_SD_DEG = 15;
/** Part of those that are anywhere between the stop and abeam instead. Common practice, no source. */
const ANYWHERE_SHARE = 0.12;
/** So many pieces from the stop to abeam, wider towards abeam. */
const STOP_PIECES = 8;
const STOP_WIDENING = 1.6;
/** Width of a piece where no needle was read. */
const WIDTH_DEG = 18;
/** A piece is spread over so much of its own width (one sd) that all together make a smooth whole. */
const SPREAD_OF_WIDTH = 0.4;
const ABEAM_DEG = 90;

/** A part of the bearings that are open, degrees right of a middle one, with its weight. */
interface Sector {
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly weight: number;
}

/**
 * What a first reading leaves open that shows no radial: any bearing beyond the stop on which the needle rests, on the
 * side that the flag shows, or (OFF, well outside the cone) all round; cut into pieces. Null where a radial is shown.
 *
 * On its stop at the start the needle says no more than "at least so far off": most aircraft that begin on the leg's
 * side of the station are not much farther, the others may be anywhere. One normal spread would make the wind, which
 * only the right bearing gives, a fact.
 */
export function openPieces(air: Belief, scene: Scene, reading: Reading): readonly Piece[] | null {
  const sectors = openSectors(scene, reading);
  if (!sectors) return null;
  const place = placeFromReading(air, scene, reading);
  const { lnRange } = place.mean;
  const { flag, courseSetDeg } = reading;
  const middleDeg =
    flag === 'off'
      ? scene.courseDegTrue + (scene.isTo ? 180 : 0)
      : centredBearingDeg(scene, { flag, courseSetDeg }, air.mean.vorBiasDeg);
  return sectors.map(({ fromDeg, toDeg, weight }) => {
    const bearingRad = (middleDeg + (fromDeg + toDeg) / 2) * RAD_PER_DEG;
    const bearingDeg = SPREAD_OF_WIDTH * (toDeg - fromDeg);
    const there = withPlace(
      air,
      { lnRange, bearingRad },
      { lnRange: lnRangeSd(place), bearingDeg },
    );
    return { belief: takeIn(there, scene, reading, { ...FITS, needle: true }), weight };
  });
}

function openSectors(scene: Scene, reading: Reading): readonly Sector[] | null {
  const { flag, needleDots } = reading;
  if (isOnStop(scene, reading)) return sectorsBeyondStop(scene, reading);
  if (flag === 'off') {
    return isInConeAtStart(scene, reading) ? null : sectorsAbout(180, NO_BEARING_SD_DEG);
  }
  return needleDots === undefined ? sectorsAbout(ABEAM_DEG, FLAG_ONLY_SD_DEG) : null;
}

/** Equal sectors to both sides of the middle, weighed by a normal spread about it. */
function sectorsAbout(reachDeg: number, sdDeg: number): readonly Sector[] {
  const count = (2 * reachDeg) / WIDTH_DEG;
  return Array.from({ length: count }, (_, index) => {
    const fromDeg = index * WIDTH_DEG - reachDeg;
    const toDeg = fromDeg + WIDTH_DEG;
    return { fromDeg, toDeg, weight: normalBelow(toDeg / sdDeg) - normalBelow(fromDeg / sdDeg) };
  });
}

function sectorsBeyondStop(scene: Scene, reading: Reading): readonly Sector[] {
  const { needleDots = 0, flag } = reading;
  const stopDeg = saturationDeg(scene);
  const openDeg = ABEAM_DEG - stopDeg;
  const isUsual = (flag === 'to') === scene.isTo && isAlongCourse(scene, reading);
  const anywhereShare = isUsual ? ANYWHERE_SHARE : 1;
  const beyond = (deg: number): number => 1 - normalBelow(deg / OFF_LINE_SD_DEG);
  const edge = (index: number): number =>
    stopDeg + openDeg * (index / STOP_PIECES) ** STOP_WIDENING;
  const isRight = needleDots > 0 === (flag === 'to');
  return Array.from({ length: STOP_PIECES }, (_, index) => {
    const near = edge(index);
    const far = edge(index + 1);
    const usual = (beyond(near) - beyond(far)) / beyond(stopDeg);
    const weight = (anywhereShare * (far - near)) / openDeg + (1 - anywhereShare) * usual;
    return isRight
      ? { fromDeg: near, toDeg: far, weight }
      : { fromDeg: -far, toDeg: -near, weight };
  });
}
