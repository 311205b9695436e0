import { turnDeg } from '../base/angle.ts';
import type { Estimate } from './estimate-record.ts';
import type { Question } from './guidance.ts';
import type { Reading } from './reading.ts';
import { isSaturated } from './update-needle.ts';
import { bearingSdDeg } from './place.ts';

/** Bearing less certain than this: the radial itself is worth asking for. Common practice, no source. */
const BEARING_UNKNOWN_SD_DEG = 6;
/** Every so many readings the OBS is turned a little to prove that the needle is alive. Common practice, no source. */
const OBS_TEST_EVERY = 3;
/** An OBS setting this far off the course was meant as that test: half of the three degrees asked for. */
const OBS_TEST_LEAST_DEG = 1.5;
/** Nobody turns the OBS within this of the station, in NM and in time. Common practice, no source. */
const OBS_TEST_LEAST_NM = 4;
const OBS_TEST_LEAST_MIN = 3;
/** Nor while the needle is farther out than this: it is being brought in, and moves by itself. */
const OBS_TEST_MOST_DOTS = 3;
/**
 * So often the direction indicator is to be compared with the compass: it drifts by 3 degrees in 15 min at most.
 * *Source:* taught practice (Thom, The Pilot's Manual 3, from memory).
 */
const COMPASS_EVERY_MS = 900_000;
/** So many readings in a row without a part of the panel: ask for it. Common practice, no source. */
const MISSED_READINGS = 2;

/** The reading that would help most next, or null when nothing is missing. */
export function nextQuestion(estimate: Estimate): Question | null {
  const last = estimate.readings.at(-1);
  // With OFF there is no needle to ask for: the alert asks for frequency, ident and altitude.
  if (last && estimate.flag === 'off') return null;
  // Nor over the station one that tells anything.
  if (estimate.overStation) return null;
  if (!last || estimate.isLost) return 'centre-needle-from';
  if (!estimate.isPlaced) return 'centre-needle-from';
  if (estimate.doubt) return 'repeat-reading';
  return missingPart(estimate, last) ?? routine(estimate);
}

/** The part of the panel that is missing most. */
function missingPart({ readings, scene, belief }: Estimate, last: Reading): Question | null {
  const { needleDots } = last;
  if (needleDots === undefined) return 'read-needle';
  const isOnStop = isSaturated(needleDots, scene);
  if (isOnStop && bearingSdDeg(belief) > BEARING_UNKNOWN_SD_DEG) return 'centre-needle-from';
  if (readings.length < MISSED_READINGS) return null;
  const recent = readings.slice(-MISSED_READINGS);
  // On its stop the needle shows no wind: a strong one can spoil the intercept unseen.
  if (recent.every((each) => isSaturated(each.needleDots ?? 0, scene))) return 'centre-needle-from';
  if (recent.every((each) => each.headingDeg === undefined)) return 'read-heading';
  const isDmeMissing = scene.dme !== null && recent.every((each) => each.dmeNm === undefined);
  return isDmeMissing ? 'read-dme' : null;
}

/** What is asked from time to time though nothing is missing: never over the station, and one at a time. */
function routine(estimate: Estimate): Question | null {
  if (isBusy(estimate)) return null;
  const own = estimate.readings.filter((each) => each.station === undefined);
  if (isObsTestDue(estimate, own)) return 'turn-obs-three-left';
  return isCompassDue(own) ? 'compare-compass' : null;
}

function isBusy({ scene, belief, hasPassed }: Estimate): boolean {
  const closeNm = Math.max(OBS_TEST_LEAST_NM, (scene.trueAirspeedKt * OBS_TEST_LEAST_MIN) / 60);
  return hasPassed || Math.exp(belief.mean.lnRange) < closeNm;
}

/** The first reading after each quarter of an hour, or the one after it where that is the needle's turn. */
function isCompassDue(own: readonly Reading[]): boolean {
  const quarter = (reading: Reading | undefined): number =>
    Math.floor(((reading?.atMs ?? 0) - (own[0]?.atMs ?? 0)) / COMPASS_EVERY_MS);
  const isFirst = (count: number): boolean =>
    count > 1 && quarter(own[count - 1]) > quarter(own[count - 2]);
  const isNeedles = (count: number): boolean => count % OBS_TEST_EVERY === 0;
  const count = own.length;
  if (isFirst(count)) return !isNeedles(count);
  return isFirst(count - 1) && isNeedles(count - 1);
}

/** Every third reading of the leg's own station, the needle not far out, and not tested since. */
function isObsTestDue({ scene }: Estimate, own: readonly Reading[]): boolean {
  if (own.length === 0 || own.length % OBS_TEST_EVERY !== 0) return false;
  if (Math.abs(own.at(-1)?.needleDots ?? 0) > OBS_TEST_MOST_DOTS) return false;
  return own
    .slice(1 - OBS_TEST_EVERY)
    .every((each) => Math.abs(turnDeg(scene.courseDeg, each.courseSetDeg)) < OBS_TEST_LEAST_DEG);
}
