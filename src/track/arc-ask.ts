import type { ArcNow } from './arc-guide.ts';
import { arcPlaceOf } from './arc-place.ts';
import type { ArcScene } from './arc-scene.ts';
import { radialSdDeg } from './deviation.ts';
import type { Estimate } from './estimate-record.ts';
import type { EstimateSeen, Question } from './guidance.ts';
import { nextReadingInS } from './next-reading.ts';
import { nextQuestion } from './question.ts';
import type { Reading } from './reading.ts';
import { isSaturated } from './update-needle.ts';

/** So many readings in a row without a part of the panel: ask for it. */
const MISSED_READINGS = 2;
/** In one of so many readings the radial has to be read. */
const RADIAL_WITHIN = 3;
/** A radial less certain than this is asked for. */
const RADIAL_SD_DEG = 2;
/** Seconds between readings on the arc, at least and as a rule. */
const SHORTEST_S = 30;
const USUAL_S = 60;
/** A reading comes this long before the turn onto the arc is told, or else after that turn, seconds. */
const BEFORE_TURN_S = 20;
const AFTER_TURN_S = 45;
/** Farther off the arc than this the next reading comes soon, NM. */
const FAR_OFF_NM = 0.5;

/**
 * The reading that would help most on an arc: the distance, and every third time the radial, by turning the OBS
 * until the needle is centred. Before the turn: as on any radial, the distance first.
 */
export function arcQuestion(estimate: Estimate, now: ArcNow): Question | null {
  const { readings } = estimate;
  if (readings.length === 0 || estimate.isLost || estimate.doubt) return nextQuestion(estimate);
  if (!now.isRangeKnown) return 'read-dme';
  if (now.join) return nextQuestion(estimate);
  const recent = readings.slice(-MISSED_READINGS);
  const isMissing = (part: (reading: Reading) => unknown): boolean =>
    recent.length === MISSED_READINGS && recent.every((each) => part(each) === undefined);
  if (isMissing((each) => each.dmeNm)) return 'read-dme';
  if (isRadialDue(estimate)) return 'centre-needle-from';
  return isMissing((each) => each.headingDeg) ? 'read-heading' : null;
}

function isRadialDue({ readings, belief, scene }: Estimate): boolean {
  if (radialSdDeg(belief) > RADIAL_SD_DEG) return true;
  if (readings.length < RADIAL_WITHIN) return false;
  return !readings
    .slice(-RADIAL_WITHIN)
    .some(
      ({ flag, needleDots }) =>
        flag !== 'off' && needleDots !== undefined && !isSaturated(needleDots, scene),
    );
}

/**
 * When the next reading is worth most on an arc, seconds after the last one: before the turn onto it, or after
 * that turn where it is too near; then each minute, and in half a minute while the wind is not known, half a mile
 * off the arc, or close to its radial.
 */
export function arcNextReadingInS(
  estimate: Estimate,
  arc: ArcScene,
  now: ArcNow,
  seen: EstimateSeen,
): number {
  if (!estimate.isPlaced || estimate.doubt || estimate.isLost) return SHORTEST_S;
  if (now.join) {
    const asOnRadialS = nextReadingInS(estimate);
    const beforeTurnS = Math.floor(now.join.toTellS - BEFORE_TURN_S);
    if (beforeTurnS < SHORTEST_S) return Math.ceil(Math.max(0, now.join.toTellS) + AFTER_TURN_S);
    return Math.min(asOnRadialS, beforeTurnS);
  }
  const isFarOff = Math.abs(arcPlaceOf(estimate.belief.mean, arc).outsideNm) > FAR_OFF_NM;
  const isSoon = seen.wind === null || isFarOff || now.phase === 'arriving';
  return isSoon ? SHORTEST_S : USUAL_S;
}
