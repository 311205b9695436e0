import type { Belief } from './belief.ts';
import type { Estimate } from './estimate-record.ts';
import type { Misfit } from './judge.ts';
import type { Reading } from './reading.ts';
import type { Scene } from './scene.ts';
import { takeIn } from './take-in.ts';
import { isSaturated } from './update-needle.ts';

/** A needle on its stop, whatever else the reading says. */
function isOnStop(scene: Scene, { needleDots, flag }: Reading): boolean {
  return needleDots !== undefined && flag !== 'off' && isSaturated(needleDots, scene);
}

/** Whether the needle still rests on the stop on which the last one has left it, with nothing turned since. */
function isStillThere(before: Estimate, reading: Reading): boolean {
  const last = before.readings.findLast((each) => each.needleDots !== undefined);
  return (
    isOnStop(before.scene, reading) &&
    last?.needleDots === reading.needleDots &&
    last?.flag === reading.flag &&
    last.courseSetDeg === reading.courseSetDeg
  );
}

/** Whether a needle is read off the stop on which it has been since the place was set: the first that tells the radial. */
export function isFirstOffStop(before: Estimate, reading: Reading): boolean {
  const { needleDots, flag } = reading;
  if (!before.withoutStop || needleDots === undefined || flag === 'off') return false;
  return !isSaturated(needleDots, before.scene);
}

/** The place that a first reading allows, without what its needle on the stop says; null for any other needle. */
export function withoutStop(placed: Belief, scene: Scene, reading: Reading): Belief | null {
  return isOnStop(scene, reading) ? takeIn(placed, scene, reading, NEEDLE_OUT) : null;
}

/** The needle is left out. */
const NEEDLE_OUT: Misfit = { needle: true, dme: false, flag: false };

/**
 * What is to be corrected by a reading: the main belief carried on to its time (`carried`), or, while the needle
 * still rests on its stop, the one without it.
 *
 * A needle that rests on its stop from the first reading on says the same each time: "at least so far off". Taken
 * in again and again it would push the place ever farther out. So beside the belief goes the one without it
 * (`withoutStop`), and each such reading starts from that.
 */
export function beforeStop(
  before: Estimate,
  carried: Belief,
  withoutStopCarried: Belief | null,
  reading: Reading,
): Belief {
  return withoutStopCarried && isStillThere(before, reading) ? withoutStopCarried : carried;
}

/** The belief without the stop after a reading that fits; null once the needle has left it. */
export function withoutStopAfter(
  before: Estimate,
  withoutStopCarried: Belief | null,
  reading: Reading,
): Belief | null {
  if (!withoutStopCarried) return null;
  const isKept = reading.needleDots === undefined || isStillThere(before, reading);
  return isKept ? takeIn(withoutStopCarried, before.scene, reading, NEEDLE_OUT) : null;
}
