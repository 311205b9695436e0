import { DEG_PER_RAD, RAD_PER_DEG, cosDeg, directionDeg, sinDeg, wrap360 } from '../base/angle.ts';
import { alongLine } from './along-line.ts';
import { WIND_EAST, WIND_NORTH } from './belief.ts';
import type { Belief } from './belief.ts';
import { varianceAlong } from './correct.ts';
import { crossTrackNm, lineDegTrue } from './deviation.ts';
import type { EstimateSeen, WindSeen } from './guidance.ts';
import { element } from './matrix.ts';
import { bearingSdDeg, lnRangeSd, placeOf } from './place.ts';
import { planeFromMagneticDeg } from './scene.ts';
import type { Scene } from './scene.ts';

/** A wind whose worse axis is less certain than this is not told. Common practice, no source. */
export const GREATEST_WIND_SD_KT = 11;
/** A drift less certain than this is not told. Common practice, no source. */
const GREATEST_DRIFT_SD_DEG = 6;
/** With a bearing or a range less certain than this there is no cross-track distance to tell. */
const GREATEST_BEARING_SD_DEG = 25;
const GREATEST_RANGE_SD = 0.5;

/** Standard deviation of the wind along its worse axis, knots. */
export function worseWindSdKt({ covariance }: Belief): number {
  const ee = element(covariance, WIND_EAST, WIND_EAST);
  const nn = element(covariance, WIND_NORTH, WIND_NORTH);
  const en = element(covariance, WIND_EAST, WIND_NORTH);
  return Math.sqrt((ee + nn) / 2 + Math.hypot((ee - nn) / 2, en));
}

function windSeen(belief: Belief, scene: Scene): WindSeen | null {
  const sdKt = worseWindSdKt(belief);
  if (sdKt > GREATEST_WIND_SD_KT) return null;
  const { windEastKt, windNorthKt } = belief.mean;
  const fromPlaneDeg = directionDeg(-windEastKt, -windNorthKt);
  const fromDegMag = wrap360(fromPlaneDeg - planeFromMagneticDeg(scene, placeOf(belief.mean)));
  return { fromDegMag, speedKt: Math.hypot(windEastKt, windNorthKt), sdKt };
}

/** Derivative of the cross-track distance by the state. */
function crossTrackSlope(belief: Belief, scene: Scene): readonly number[] {
  const { mean } = belief;
  const angle = mean.bearingRad - lineDegTrue(mean, scene) * RAD_PER_DEG;
  const alongNm = Math.exp(mean.lnRange) * Math.cos(angle);
  return [crossTrackNm(mean, scene), alongNm, 0, 0, alongNm * RAD_PER_DEG, 0, 0];
}

/** Track minus heading while flying this heading shown (magnetic), degrees, right positive. */
function driftDegOn(belief: Belief, scene: Scene, headingDeg: number): number {
  const { mean } = belief;
  const { toLineDeg, trueAirspeedKt } = alongLine(mean, scene);
  const heading = headingDeg + toLineDeg + lineDegTrue(mean, scene);
  const across = mean.windEastKt * cosDeg(heading) - mean.windNorthKt * sinDeg(heading);
  const along = mean.windEastKt * sinDeg(heading) + mean.windNorthKt * cosDeg(heading);
  return Math.atan2(across, trueAirspeedKt + along) * DEG_PER_RAD;
}

function driftSdDeg(belief: Belief, scene: Scene, headingDeg: number): number {
  const { toLineDeg, trueAirspeedKt } = alongLine(belief.mean, scene);
  const heading = headingDeg + toLineDeg + lineDegTrue(belief.mean, scene);
  const slope = [0, 0, cosDeg(heading), -sinDeg(heading), 0, 0, 0];
  return (Math.sqrt(varianceAlong(belief, slope)) / trueAirspeedKt) * DEG_PER_RAD;
}

/** What the readings show of the place and the wind; null where they show nothing. */
export function seenOf(belief: Belief, scene: Scene, headingDeg: number): EstimateSeen {
  const isPlaceKnown =
    bearingSdDeg(belief) <= GREATEST_BEARING_SD_DEG && lnRangeSd(belief) <= GREATEST_RANGE_SD;
  const isDriftKnown = driftSdDeg(belief, scene, headingDeg) <= GREATEST_DRIFT_SD_DEG;
  return {
    crossTrackNm: isPlaceKnown ? crossTrackNm(belief.mean, scene) : null,
    crossTrackSdNm: isPlaceKnown
      ? Math.sqrt(varianceAlong(belief, crossTrackSlope(belief, scene)))
      : null,
    driftDeg: isDriftKnown ? driftDegOn(belief, scene, headingDeg) : null,
    wind: windSeen(belief, scene),
  };
}
