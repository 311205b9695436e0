import type { Belief } from './belief.ts';
import {
  dmeDensity,
  needleExpected,
  needlePositions,
  needleProbability,
  readableNeedle,
} from './likelihood.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
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
/** A step of the DME's display. */
const DME_STEP_NM = 0.1;
/** From how many readings on, and how much, a needle must have strayed to be known to stray. */
const SHOWN_AFTER = 7;
const SHOWN_TO_STRAY = 0.5;
/** The air is never taken to be steadier than this part of the usual variance. */
const LEAST_STRAY = 0.1;

/**
 * The suspicion that the needle is stuck: it shows the same again, wherever it should stand.
 *
 * In steady air a good needle may well rest; so its usual straying is measured in flight (`strayCount`,
 * `straySum`), and a needle that has strayed little so far makes no suspicion by resting.
 */
export function watchNeedle(
  watch: Watch,
  predicted: Belief,
  scene: Scene,
  reading: Reading,
  last: Reading | null,
): Pick<Watch, 'stuckNeedle' | 'strayCount' | 'straySum'> {
  const needle = readableNeedle(reading);
  const { stuckNeedle, strayCount, straySum } = watch;
  if (!needle) return { stuckNeedle, strayCount, straySum };
  const expected = needleExpected(predicted, scene, needle);
  const stop = isSaturated(needle.needleDots, scene);
  const offDeg = needle.needleDots * scene.degreesPerDot - expected.meanDeg;
  const stray = stop
    ? 1
    : Math.min(4, offDeg ** 2 / (expected.variance + scene.degreesPerDot ** 2 / 48));
  const lastDots = last && readableNeedle(last)?.needleDots;
  if (lastDots === null || lastDots === undefined || stop) {
    return { stuckNeedle, strayCount: strayCount + 1, straySum: straySum + stray };
  }
  const share = Math.min(1, Math.max(LEAST_STRAY, straySum / strayCount));
  const calm = { meanDeg: expected.meanDeg, variance: expected.variance * share };
  const trusted = needleProbability(scene, needle.needleDots, calm);
  const isSame = Math.abs(needle.needleDots - lastDots) < SAME_DOTS;
  const stuck = isSame ? SHOWS_THE_SAME : (1 - SHOWS_THE_SAME) / (needlePositions(scene) - 1);
  // A needle known to stray that now rests must not teach that needles rest.
  const isTaught = !isSame || strayCount < SHOWN_AFTER || share < SHOWN_TO_STRAY;
  return {
    stuckNeedle: weighed(stuckNeedle, Math.log(stuck / trusted), null),
    strayCount: strayCount + (isTaught ? 1 : 0),
    straySum: straySum + (isTaught ? stray : 0),
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
  return weighed(before, Math.min(10, Math.log(stuck / trusted)), null);
}
