import type { Belief } from './belief.ts';
import { varianceAlong } from './correct.ts';
import { indicatedRadialDeg, needleDeg, needleSlope } from './deviation.ts';
import { normalBelow, normalDensity } from './normal.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { NEEDLE_STEP_DOTS, SCALLOPING_SD_DEG } from './tuning.ts';
import { dmeCorrection, updateDme } from './update-dme.ts';
import { isSaturated } from './update-needle.ts';

/** Part of all readings that are mistaken in any way, and so may show anything. */
const MISTAKEN = 0.01;
/** Over how many NM a mistaken DME spreads. */
const DME_SPREAD_NM = 80;

/** How many different needle positions a pilot tells apart. */
export function needlePositions(scene: Scene): number {
  return 1 + (2 * scene.dotsFullScale) / NEEDLE_STEP_DOTS;
}

/** A needle that can be read with a flag that gives it a meaning. */
export interface ReadableNeedle {
  readonly needleDots: number;
  readonly courseSetDeg: number;
  readonly flag: 'to' | 'from';
}

/** The needle of a reading; null where there is none or the flag is OFF. */
export function readableNeedle(reading: Reading): ReadableNeedle | null {
  const { needleDots, courseSetDeg, flag } = reading;
  return needleDots === undefined || flag === 'off' ? null : { needleDots, courseSetDeg, flag };
}

/** Where the needle should stand, degrees, and the variance of that; the step of reading not included. */
export interface NeedleExpected {
  readonly meanDeg: number;
  readonly variance: number;
}

/** Where the needle of a reading should stand in a belief. */
export function needleExpected(
  belief: Belief,
  scene: Scene,
  needle: ReadableNeedle,
): NeedleExpected {
  const radialDeg = indicatedRadialDeg(belief.mean, scene);
  return {
    meanDeg: needleDeg(radialDeg, needle.courseSetDeg, needle.flag),
    variance: varianceAlong(belief, needleSlope(needle.flag)) + SCALLOPING_SD_DEG ** 2,
  };
}

/**
 * Probability that the needle is read where it was, when it should stand at a mean with a spread.
 *
 * `stepDots`: to what part of a dot it is read.
 */
export function needleProbability(
  scene: Scene,
  needleDots: number,
  expected: NeedleExpected,
  stepDots = NEEDLE_STEP_DOTS,
): number {
  const sd = Math.sqrt(expected.variance);
  const halfStepDeg = (stepDots * scene.degreesPerDot) / 2;
  const readDeg = needleDots * scene.degreesPerDot;
  const upper = (readDeg + halfStepDeg - expected.meanDeg) / sd;
  const lower = (readDeg - halfStepDeg - expected.meanDeg) / sd;
  const isStop = isSaturated(needleDots, scene);
  const above = isStop && needleDots > 0 ? 1 : normalBelow(upper);
  const below = isStop && needleDots < 0 ? 0 : normalBelow(lower);
  return (1 - MISTAKEN) * Math.max(0, above - below) + MISTAKEN / needlePositions(scene);
}

/** Density of the DME reading, per NM. */
export function dmeDensity(belief: Belief, scene: Scene, dmeNm: number): number {
  if (!scene.dme) return 1;
  const { surprise, variance } = dmeCorrection(belief, scene.dme, dmeNm);
  const sd = Math.sqrt(variance);
  return ((1 - MISTAKEN) * normalDensity(surprise / sd)) / sd + MISTAKEN / DME_SPREAD_NM;
}

/** Natural logarithms of how likely each part of a reading was; 0 for a part that was not read. */
export interface Likelihood {
  readonly lnNeedle: number;
  readonly lnDme: number;
  /** The belief with the DME taken in, and nothing else. */
  readonly givenDme: Belief;
}

/** How likely a reading was for a belief carried on to its time; the needle given the DME. */
export function likelihoodOf(belief: Belief, scene: Scene, reading: Reading): Likelihood {
  const { dme } = scene;
  const dmeNm = dme === null ? undefined : reading.dmeNm;
  const lnDme = dmeNm === undefined ? 0 : Math.log(dmeDensity(belief, scene, dmeNm));
  const givenDme = dme && dmeNm !== undefined ? updateDme(belief, dme, dmeNm) : belief;
  return { lnNeedle: lnNeedleOf(givenDme, scene, reading), lnDme, givenDme };
}

/** Natural logarithm of how likely the needle of a reading was; 0 where it tells nothing. */
function lnNeedleOf(belief: Belief, scene: Scene, reading: Reading): number {
  const needle = readableNeedle(reading);
  if (!needle) return 0;
  const expected = needleExpected(belief, scene, needle);
  return Math.log(needleProbability(scene, needle.needleDots, expected));
}
