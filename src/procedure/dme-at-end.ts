import { cosDeg, sinDeg } from '../base/angle.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import { slantFromGround } from '../station/slant-range.ts';

/**
 * What the DME reads on the leg with so much ground distance to go, slant NM.
 *
 * `toGoNm` along the course, 0 and up. Null without DME, where no end is known, and where so much to go
 * lies on the far side of the station.
 */
export function dmeAtEndNm(leg: DatedLeg, toGoNm: number): number | null {
  const { dmeAntenna, endGroundNm, courseDegTrue } = leg;
  if (dmeAntenna === null || endGroundNm === null) return null;
  const isTo = leg.leg.direction === 'to';
  const rangeNm = isTo ? endGroundNm + toGoNm : endGroundNm - toGoNm;
  if (rangeNm < 0) return null;
  const radialDegTrue = isTo ? courseDegTrue + 180 : courseDegTrue;
  const groundNm = Math.hypot(
    rangeNm * sinDeg(radialDegTrue) - dmeAntenna.eastNm,
    rangeNm * cosDeg(radialDegTrue) - dmeAntenna.northNm,
  );
  return slantFromGround(groundNm, dmeAntenna.heightFt);
}
