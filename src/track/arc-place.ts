import { DEG_PER_RAD, RAD_PER_DEG, directionDeg, wrap180, wrap360 } from '../base/angle.ts';
import type { ArcScene } from './arc-scene.ts';
import { crossingDegTrue } from './arc-scene.ts';
import type { StateMean } from './belief.ts';
import { placeOf } from './place.ts';

/** Where the aircraft is as seen from its arc. */
export interface ArcPlace {
  /** From the middle of the arc over the ground, NM. */
  readonly rangeNm: number;
  /** Outside the arc positive, inside negative, NM. */
  readonly outsideNm: number;
  /** Direction of the aircraft from the middle of the arc, degrees true, 0 <= x < 360. */
  readonly bearingDeg: number;
  /** The way along the arc abeam the aircraft, degrees true, 0 <= x < 360. */
  readonly alongDeg: number;
  /** Angle about the middle flown since the radial on which the arc is joined; negative: before it. */
  readonly sweptDeg: number;
  /** Angle about the middle still to fly to the radial where the arc ends; negative: past it. */
  readonly toGoDeg: number;
  /** The same along the arc, NM. */
  readonly toGoNm: number;
}

/** The place of a state as seen from its arc; the radials are those that the receiver shows. */
export function arcPlaceOf(mean: StateMean, arc: ArcScene): ArcPlace {
  const { eastNm, northNm } = placeOf(mean);
  const fromEast = eastNm - arc.eastNm;
  const fromNorth = northNm - arc.northNm;
  const rangeNm = Math.hypot(fromEast, fromNorth);
  const bearingDeg = directionDeg(fromEast, fromNorth);
  const { sweepDeg, toGoDeg } = anglesOf(arc, bearingDeg, mean.vorBiasDeg);
  return {
    rangeNm,
    outsideNm: rangeNm - arc.radiusNm,
    bearingDeg,
    alongDeg: wrap360(bearingDeg + 90 * arc.sense),
    sweptDeg: sweepDeg - toGoDeg,
    toGoDeg,
    toGoNm: arc.radiusNm * toGoDeg * RAD_PER_DEG,
  };
}

/** The angle of the whole arc, and that from a bearing to the radial where it ends, both in its turn. */
function anglesOf(
  arc: ArcScene,
  bearingDeg: number,
  vorBiasDeg: number,
): { sweepDeg: number; toGoDeg: number } {
  const startDeg = crossingDegTrue(arc, arc.joinRadialDegTrue - vorBiasDeg);
  const endDeg = crossingDegTrue(arc, arc.endRadialDegTrue - vorBiasDeg);
  const sweepDeg = wrap360(arc.sense * (endDeg - startDeg));
  // The rest of the circle is shared: its first half lies past the end, its second half before the start.
  const middleDeg = startDeg + (arc.sense * sweepDeg) / 2;
  return { sweepDeg, toGoDeg: sweepDeg / 2 - arc.sense * wrap180(bearingDeg - middleDeg) };
}

/**
 * How far the turn onto the arc has to begin before it, NM over the ground, from the radius of that turn: the
 * circle of the turn touches both the radial and the arc.
 *
 * Inbound a little less than the radius, outbound a little more, since the arc bends away from that turn or with
 * it. Half of the radius of the arc at most. *Source:* plane geometry; the same sense as US Navy P-1265, p. 74
 * (inside 12 DME half a mile less inbound, more outbound, there for a half-standard-rate turn).
 */
export function turnOntoArcNm(
  turnRadiusNm: number,
  arcRadiusNm: number,
  isInbound: boolean,
): number {
  const sense = isInbound ? 1 : -1;
  const squared = arcRadiusNm ** 2 + sense * 2 * arcRadiusNm * turnRadiusNm;
  const leadNm = sense * (Math.sqrt(Math.max(0, squared)) - arcRadiusNm);
  return Math.min(arcRadiusNm / 2, leadNm);
}

/** Degrees about the middle of an arc for a distance along it. 0 on an arc without a radius. */
export function arcAngleDeg(alongNm: number, radiusNm: number): number {
  return radiusNm > 0 ? (alongNm / radiusNm) * DEG_PER_RAD : 0;
}
