import { asinDeg, cosDeg, sinDeg, wrap360 } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import type { ArcPlace } from './arc-place.ts';
import type { StateMean } from './belief.ts';
import { placeOf } from './place.ts';
import { planeFromMagneticDeg } from './scene.ts';
import type { Scene } from './scene.ts';

/** Slower than this over the ground no time is reckoned, knots. */
const LEAST_SPEED_KT = 1;

/** The air that an aircraft flies its arc in, in the plane about the station. */
export interface ArcAir {
  readonly trueAirspeedKt: number;
  readonly windEastKt: number;
  readonly windNorthKt: number;
  /** What to add to a heading shown (magnetic) to get its direction in the plane, degrees. */
  readonly toPlaneDeg: number;
}

/** The air of a state. */
export function arcAirOf(mean: StateMean, scene: Scene): ArcAir {
  return {
    trueAirspeedKt: Math.max(20, scene.trueAirspeedKt + mean.airspeedErrorKt),
    windEastKt: mean.windEastKt,
    windNorthKt: mean.windNorthKt,
    toPlaneDeg: planeFromMagneticDeg(scene, placeOf(mean)) + mean.headingErrorDeg,
  };
}

/** The heading shown (magnetic) that makes good a direction in the plane, 0 <= x < 360. */
export function headingAlongDeg(air: ArcAir, alongDeg: number): number {
  const acrossKt = air.windEastKt * cosDeg(alongDeg) - air.windNorthKt * sinDeg(alongDeg);
  return wrap360(alongDeg - asinDeg(acrossKt / air.trueAirspeedKt) - air.toPlaneDeg);
}

/** Groundspeed while a direction in the plane is made good, knots; never below 1. */
export function speedAlongKt(air: ArcAir, alongDeg: number): number {
  const acrossKt = air.windEastKt * cosDeg(alongDeg) - air.windNorthKt * sinDeg(alongDeg);
  const tailKt = air.windEastKt * sinDeg(alongDeg) + air.windNorthKt * cosDeg(alongDeg);
  const throughKt = Math.sqrt(Math.max(0, air.trueAirspeedKt ** 2 - acrossKt ** 2));
  return Math.max(LEAST_SPEED_KT, throughKt + tailKt);
}

/** Speed over the ground on a heading shown (magnetic), NM a second to the east and to the north. */
export function groundNmPerS(air: ArcAir, headingDeg: number): { east: number; north: number } {
  const plane = headingDeg + air.toPlaneDeg;
  return {
    east: (air.trueAirspeedKt * sinDeg(plane) + air.windEastKt) / S_PER_H,
    north: (air.trueAirspeedKt * cosDeg(plane) + air.windNorthKt) / S_PER_H,
  };
}

/** Into so many pieces an arc is cut for its time: the groundspeed changes on the way round. */
const PIECES = 12;

/** Time along the arc from abeam the aircraft for an angle about its middle, seconds; 0 for none left. */
export function timeAlongArcS(
  air: ArcAir,
  place: ArcPlace,
  arc: { readonly radiusNm: number; readonly sense: 1 | -1 },
  angleDeg: number,
): number {
  if (!(angleDeg > 0)) return 0;
  const pieceNm = (arc.radiusNm * angleDeg * Math.PI) / 180 / PIECES;
  let hours = 0;
  for (let piece = 0; piece < PIECES; piece += 1) {
    const sweptDeg = (angleDeg * (piece + 0.5)) / PIECES;
    hours += pieceNm / speedAlongKt(air, place.alongDeg + arc.sense * sweptDeg);
  }
  return hours * S_PER_H;
}
