import { turnDeg } from '../base/angle.ts';
import { alongLine } from './along-line.ts';
import type { Estimate } from './estimate-record.ts';
import type { ReverseCause } from './guidance.ts';
import { isAlongCourse } from './passage.ts';
import { isFromUnproven } from './passed.ts';
import type { Reading } from './reading.ts';
import { isStationBehind } from './station-behind.ts';
import { isOnStop } from './update-needle.ts';
import { greatestWeight } from './watch-record.ts';

/** Weight at which a needle that moves the wrong way is told. Tuned by simulation (tests/bench/track-faults.ts). */
const REVERSED = 5.5;
/** A single reading may be a slip: a suspicion rests on at least two. Common practice, no source. */
const LEAST_COUNT = 2;
/** An OBS set this far from the course works the needle backwards when the course is flown. */
const BACKWARDS_DEG = 120;
/** The needle counts as centred within this: then the OBS only shows the radial. One step of reading. */
const CENTRED_DOTS = 0.5;
/** Centred by hand it may be left this far off. */
const LEFT_OVER_DOTS = 1.5;
/** A course meant to be set is set this exactly, degrees; the radial looked for lies elsewhere. Common practice, no source. */
const SET_EXACTLY_DEG = 3;
/** Turning outbound over the station the flag may still show TO within this. Common practice, no source. */
const STILL_TURNING_NM = 3;

/** Whether the course on the OBS is the other end of the leg's, and not the radial that was looked for. */
function isObsBackwards(estimate: Estimate, last: Reading): boolean {
  if (last.flag === 'off') return false;
  const off = Math.abs(turnDeg(estimate.scene.courseDeg, last.courseSetDeg));
  const dots = Math.abs(last.needleDots ?? 0);
  if (off <= BACKWARDS_DEG || dots <= CENTRED_DOTS) return false;
  return dots > LEFT_OVER_DOTS || !isRadialLookedFor(estimate, off);
}

/**
 * Whether the needle may have been centred by turning the OBS, as the tool asks when a leg begins and while the needle is
 * on its stop; not quite centred by then, and not on the very reciprocal, where a course set wrongly would be.
 */
function isRadialLookedFor({ readings, scene }: Estimate, offDeg: number): boolean {
  const before = readings.at(-2);
  const isAskedFor = before === undefined || isOnStop(scene, before);
  return isAskedFor || 180 - offDeg > SET_EXACTLY_DEG;
}

/**
 * TO on a leg from the station, well before the station, where that is news: at the first reading, and then only with a
 * needle off its stop, which tells where the aircraft is. Read again, TO is as it should be until the station is passed.
 */
function isStationAhead(
  { scene, belief, isPlaced, openBearing, readings }: Estimate,
  last: Reading,
): boolean {
  if (scene.isTo || !isPlaced || last.flag !== 'to' || !isAlongCourse(scene, last)) return false;
  const earlier = readings.slice(0, -1);
  if (openBearing || earlier.some(({ flag, station }) => flag !== 'off' && !station)) return false;
  return alongLine(belief.mean, scene).pastStationNm < -STILL_TURNING_NM;
}

/** Why needle and flag may be read the wrong way round; null: they need not be. */
export function reverseCause(estimate: Estimate): ReverseCause | null {
  const { doubt, overStation } = estimate;
  const last = estimate.readings.at(-1);
  // Over the station the needle means nothing either way, and the OBS is being turned.
  if (!last || overStation) return null;
  if (!last.station && isObsBackwards(estimate, last)) return 'obs-reciprocal';
  if (doubt?.misfit.flag === true && !doubt.misfit.dme) return 'flag-against-place';
  const from = fromCause(estimate);
  if (from) return from;
  if (!last.station && isStationAhead(estimate, last)) return 'to-before-station';
  return isNeedleBackwards(estimate) ? 'needle-backwards' : null;
}

/** FROM on a leg to the station. While the bearing is open that is asked for first: it tells where the station is. */
function fromCause(estimate: Estimate): ReverseCause | null {
  if (isStationBehind(estimate)) return 'station-behind';
  return isFromUnproven(estimate) && !estimate.openBearing ? 'from-before-station' : null;
}

/** A direction indicator that has jumped explains the same needle: the better explanation is told. */
function isNeedleBackwards({ watch }: Estimate): boolean {
  const weight = greatestWeight(watch.reversed, LEAST_COUNT);
  return weight >= REVERSED && weight >= greatestWeight(watch.jumps, LEAST_COUNT);
}

/** The check that settles it, as spoken. */
export function reverseAsk({ readings }: Estimate, cause: ReverseCause): string {
  const dmeNm = readings.at(-1)?.dmeNm;
  const at = dmeNm === undefined ? '' : ` at ${dmeNm}`;
  switch (cause) {
    case 'obs-reciprocal':
      return 'The OBS is set to the reciprocal: the needle works backwards. Set the course of the leg.';
    case 'flag-against-place':
      return 'The flag does not fit where you should be: read the flag and the course on the OBS again.';
    case 'from-before-station':
      return `FROM${at}, and no TO before it: check the OBS and the flag.`;
    case 'station-behind':
      return 'FROM, and the distance grows: the station is behind you. Turn back to it, or fly a leg from it.';
    case 'to-before-station':
      return 'TO on an outbound leg: the station is still ahead. Check the OBS and the flag.';
    case 'needle-backwards':
      return 'The needle moves the wrong way: check its side, and the course on the OBS.';
  }
}
