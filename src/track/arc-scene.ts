import { cosDeg, sinDeg, wrap360 } from '../base/angle.ts';
import { stationDeg } from '../base/bearing.ts';
import { joiningRadialDeg } from '../leg/check-arc.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import { trueFromStation } from '../station/radial.ts';
import { groundFromSlant } from '../station/slant-range.ts';

/** The arc of a leg in the plane about the station, NM and degrees true at the station. */
export interface ArcScene {
  /** The middle of the arc: the antenna of the DME. */
  readonly eastNm: number;
  readonly northNm: number;
  /** Over the ground; the DME shows more. */
  readonly radiusNm: number;
  /** What the DME shows on the arc. */
  readonly dmeNm: number;
  /** 1: clockwise about the station, which then lies on the right; -1: anticlockwise. */
  readonly sense: 1 | -1;
  readonly joinRadialDegTrue: number;
  readonly endRadialDegTrue: number;
}

/** The arc of a leg; undefined where the leg is none, or its station has no DME. */
export function arcSceneOf({ leg, dmeAntenna }: DatedLeg): ArcScene | undefined {
  const { arc, station } = leg;
  if (arc === undefined || dmeAntenna === null) return undefined;
  return {
    eastNm: dmeAntenna.eastNm,
    northNm: dmeAntenna.northNm,
    radiusNm: groundFromSlant(arc.dmeNm, dmeAntenna.heightFt),
    dmeNm: arc.dmeNm,
    sense: arc.turn === 'clockwise' ? 1 : -1,
    joinRadialDegTrue: trueFromStation(stationDeg(joiningRadialDeg(leg)), station),
    endRadialDegTrue: trueFromStation(stationDeg(arc.toRadialDeg), station),
  };
}

/**
 * Direction from the middle of the arc to where a radial crosses it, degrees true, 0 <= x < 360.
 *
 * The radial itself where the DME stands at the VOR. Elsewhere: of two crossings the one farther from the
 * station; none (the DME farther away than the arc is wide): the nearest direction.
 */
export function crossingDegTrue(arc: ArcScene, radialDegTrue: number): number {
  const besideNm = arc.eastNm * cosDeg(radialDegTrue) - arc.northNm * sinDeg(radialDegTrue);
  const ratio = Math.min(1, Math.max(-1, besideNm / arc.radiusNm));
  return wrap360(radialDegTrue - (Math.asin(ratio) * 180) / Math.PI);
}
