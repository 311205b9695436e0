import { turnDeg } from '../base/angle.ts';
import type { Belief } from './belief.ts';
import {
  dmeDensity,
  needleExpected,
  needlePositions,
  needleProbability,
  readableNeedle,
} from './likelihood.ts';
import type { NeedleExpected } from './likelihood.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { NEEDLE_STEP_DOTS } from './tuning.ts';
import { dmeExpected } from './update-dme.ts';
import { isSaturated } from './update-needle.ts';
import { weighed } from './watch-record.ts';
import type { Suspicion, Watch } from './watch-record.ts';

/** A stuck indicator shows the same again, but for slips of the reader. */
const SHOWS_THE_SAME = 0.97;
/** Needle positions and distances nearer than this are the same. */
const SAME_DOTS = 0.01;
const SAME_NM = 0.06;
/** A DME that should have changed by less than this says nothing by standing still. */
const LEAST_MOTION_NM = 0.3;
/** The greatest weight: above all limits of monitor.ts, and below what one sign of life takes away from it. */
const GREATEST_WEIGHT = 10;
/** A step of the DME's display. */
const DME_STEP_NM = 0.1;
/** From how many readings on, and how much, a needle must have strayed to be known to stray. */
const SHOWN_AFTER = 7;
const SHOWN_TO_STRAY = 0.5;
/** Only where the wind is known does a needle tell how much it strays by itself. */
const TEACHES_BELOW_DEG2 = 1;
/** One reading does not teach more than this. */
const GREATEST_STRAY = 4;
/** What a needle can gain at most by resting while the OBS rests too, and how far the OBS must be turned. */
const GREATEST_GAIN_AT_REST = 0.9;
const OBS_TURNED_DEG = 1.5;
/** As many readings in whole dots, and none in a part of one, show that the needle is read to whole dots. */
const WHOLE_DOTS_AFTER = 4;
/** The air is never taken to be steadier than this part of the usual variance. */
const LEAST_STRAY = 0.1;

/**
 * To what part of a dot the needle has been read so far: whole dots where no reading has had a part of one, once
 * there are some; until then, and else, half dots.
 */
function stepOf(earlier: readonly Reading[]): number {
  const isWhole = earlier.every(({ needleDots }) => Number.isInteger(needleDots ?? 0));
  return isWhole && earlier.length >= WHOLE_DOTS_AFTER ? 1 : NEEDLE_STEP_DOTS;
}

/** How much of the usual variance the needle of this flight has shown to stray. */
function strayShare({ strayCount, straySum }: Watch): number {
  return Math.min(1, Math.max(LEAST_STRAY, straySum / strayCount));
}

/** What a reading teaches about how much the needle strays by itself. */
function taught(
  watch: Watch,
  expected: NeedleExpected,
  offDeg: number,
  isSame: boolean,
  scene: Scene,
): Pick<Watch, 'strayCount' | 'straySum'> {
  const { strayCount, straySum } = watch;
  // A needle known to stray that now rests must not teach that needles rest.
  const isRestOfStrayer =
    isSame && strayCount >= SHOWN_AFTER && strayShare(watch) >= SHOWN_TO_STRAY;
  if (expected.variance > TEACHES_BELOW_DEG2 || isRestOfStrayer) return { strayCount, straySum };
  const stray = offDeg ** 2 / (expected.variance + scene.degreesPerDot ** 2 / 48);
  return { strayCount: strayCount + 1, straySum: straySum + Math.min(GREATEST_STRAY, stray) };
}

/**
 * The suspicion that the needle is stuck: it shows the same again, wherever it should stand.
 *
 * In steady air a good needle may well rest; so its usual straying is measured in flight (`strayCount`,
 * `straySum`), and a needle that has strayed little so far makes no suspicion by resting. A needle that rests
 * through a change of the OBS counts in full, one that only rests counts little.
 */
export function watchNeedle(
  watch: Watch,
  predicted: Belief,
  scene: Scene,
  reading: Reading,
  earlier: readonly Reading[],
): Pick<Watch, 'stuckNeedle' | 'strayCount' | 'straySum'> {
  const needle = readableNeedle(reading);
  const last = earlier.at(-1);
  const lastNeedle = last ? readableNeedle(last) : null;
  if (!needle || !lastNeedle || isSaturated(needle.needleDots, scene)) return watch;
  const expected = needleExpected(predicted, scene, needle);
  const isSame = Math.abs(needle.needleDots - lastNeedle.needleDots) < SAME_DOTS;
  const isObsTurned =
    Math.abs(turnDeg(lastNeedle.courseSetDeg, needle.courseSetDeg)) > OBS_TURNED_DEG;
  // A turned OBS must not be judged by how calm the needle was at rest.
  const share = isObsTurned ? 1 : strayShare(watch);
  const calm = { ...expected, variance: expected.variance * share };
  const trusted = needleProbability(scene, needle.needleDots, calm, stepOf(earlier));
  const stuck = isSame ? SHOWS_THE_SAME : (1 - SHOWS_THE_SAME) / (needlePositions(scene) - 1);
  const greatest = isObsTurned ? Infinity : GREATEST_GAIN_AT_REST;
  const gain = Math.min(greatest, Math.log(stuck / trusted));
  const offDeg = needle.needleDots * scene.degreesPerDot - expected.meanDeg;
  return {
    stuckNeedle: kept(weighed(watch.stuckNeedle, gain, null)),
    ...taught(watch, expected, offDeg, isSame, scene),
  };
}

/** The suspicion that the DME is stuck: it shows the same distance though it should have changed. */
export function watchDme(
  before: Suspicion,
  predicted: Belief,
  scene: Scene,
  reading: Reading,
  last: Reading | null,
): Suspicion {
  const { dmeNm } = reading;
  const lastNm = last?.dmeNm;
  if (dmeNm === undefined || lastNm === undefined || !scene.dme) return before;
  const isSame = Math.abs(dmeNm - lastNm) < SAME_NM;
  const motionNm = Math.abs(dmeExpected(predicted.mean, scene.dme).slantNm - lastNm);
  if (isSame && motionNm < LEAST_MOTION_NM) return before;
  const trusted = dmeDensity(predicted, scene, dmeNm);
  const stuck = isSame ? SHOWS_THE_SAME / DME_STEP_NM : (1 - SHOWS_THE_SAME) / 80;
  return kept(weighed(before, Math.min(GREATEST_WEIGHT, Math.log(stuck / trusted)), null));
}

/** No surer than so: what was stuck for long and moves again is trusted again at once. */
function kept(suspicion: Suspicion): Suspicion {
  return { ...suspicion, weight: Math.min(GREATEST_WEIGHT, suspicion.weight) };
}
