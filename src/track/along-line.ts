import { RAD_PER_DEG, asinDeg, cosDeg, sinDeg, wrap360 } from '../base/angle.ts';
import { S_PER_H } from '../base/units.ts';
import type { StateMean } from './belief.ts';
import { crossTrackNm, lineDegTrue } from './deviation.ts';
import { placeOf } from './place.ts';
import { planeFromMagneticDeg } from './scene.ts';
import type { Scene } from './scene.ts';

/** The motion of the aircraft as seen from the line of the leg, at one place and in one wind. */
export interface AlongLine {
  readonly rangeNm: number;
  /** Right of the line, NM, seen the way the leg is flown. */
  readonly crossTrackNm: number;
  /** Along the line beyond the point abeam the station, NM; negative before it. */
  readonly pastStationNm: number;
  /** The part of the wind that blows to the right across the line, and along it, knots. */
  readonly windAcrossKt: number;
  readonly windAlongKt: number;
  readonly trueAirspeedKt: number;
  /** Heading shown (magnetic) that keeps the line in this wind, 0 <= x < 360. */
  readonly lineHeadingDeg: number;
  /** What to add to a magnetic heading to get its angle to the line, degrees. */
  readonly toLineDeg: number;
}

/** The line of the leg as seen from a state. */
export function alongLine(mean: StateMean, scene: Scene): AlongLine {
  const line = lineDegTrue(mean, scene);
  const windAcrossKt = mean.windEastKt * cosDeg(line) - mean.windNorthKt * sinDeg(line);
  const windAlongKt = mean.windEastKt * sinDeg(line) + mean.windNorthKt * cosDeg(line);
  const trueAirspeedKt = Math.max(20, scene.trueAirspeedKt + mean.airspeedErrorKt);
  const rangeNm = Math.exp(mean.lnRange);
  const toLineDeg = planeFromMagneticDeg(scene, placeOf(mean)) + mean.headingErrorDeg - line;
  return {
    rangeNm,
    crossTrackNm: crossTrackNm(mean, scene),
    pastStationNm: rangeNm * Math.cos(mean.bearingRad - line * RAD_PER_DEG),
    windAcrossKt,
    windAlongKt,
    trueAirspeedKt,
    lineHeadingDeg: wrap360(-asinDeg(windAcrossKt / trueAirspeedKt) - toLineDeg),
    toLineDeg,
  };
}

/** Speed across the line, right positive, NM a second, on a heading shown (magnetic). */
export function acrossNmPerS(motion: AlongLine, headingDeg: number): number {
  const across = motion.trueAirspeedKt * sinDeg(headingDeg + motion.toLineDeg);
  return (across + motion.windAcrossKt) / S_PER_H;
}

/** With less than this over the ground nobody would go on. Common practice, no source. */
const LEAST_WORTH_FLYING_KT = 15;

/** Whether the wind leaves no heading that keeps the line, or hardly any way made good along it. */
export function isWindTooStrong(motion: AlongLine): boolean {
  const { trueAirspeedKt, windAcrossKt } = motion;
  return Math.abs(windAcrossKt) >= trueAirspeedKt || lineSpeedKt(motion) < LEAST_WORTH_FLYING_KT;
}

/** Speed over the ground along the line while it is kept, knots; never below 1. */
export function lineSpeedKt(motion: AlongLine): number {
  const { trueAirspeedKt, windAcrossKt, windAlongKt } = motion;
  return Math.max(1, Math.sqrt(Math.max(0, trueAirspeedKt ** 2 - windAcrossKt ** 2)) + windAlongKt);
}
