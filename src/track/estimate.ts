import { MS_PER_S } from '../base/units.ts';
import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Wind } from '../wind/wind.ts';
import type { Belief } from './belief.ts';
import { carriedStart } from './carry-over.ts';
import { choosePlan } from './choose-plan.ts';
import { takeInCrossBearing } from './cross-bearing.ts';
import { weigh } from './doubt.ts';
import type { Estimate, LegStart } from './estimate-record.ts';
import { FITS, isMisfit, judge } from './judge.ts';
import { afterPassage, isAlongCourse } from './passage.ts';
import { placeOf } from './place.ts';
import { predict } from './predict.ts';
import type { Reading } from './reading.ts';
import { cadenceS } from './cadence.ts';
import { isDuplicate, onlyNewPart } from './same-time.ts';
import { planeFromMagneticDeg, sceneOf } from './scene.ts';
import { airBelief, placeFromReading } from './start-belief.ts';
import { takeIn } from './take-in.ts';
import { flown, turnedBy } from './told-path.ts';
import { LONGEST_GAP_S } from './tuning.ts';

export type { Estimate } from './estimate-record.ts';

/**
 * What is known before the first reading of a leg: the forecast, or what another leg's estimate carries over
 * (place, wind, instrument errors), with the heading to turn to.
 */
export function startEstimate(
  leg: DatedLeg,
  aircraft: Aircraft,
  wind?: Wind,
  carried?: Estimate,
): Estimate {
  const scene = sceneOf(leg, aircraft);
  const start: LegStart = carried
    ? carriedStart(carried, leg, scene)
    : {
        belief: airBelief(wind ?? null),
        isPlaced: false,
        atMs: null,
        headingDeg: null,
        plan: null,
      };
  return fromStart({ scene, leg, aircraft, start });
}

function fromStart(given: Pick<Estimate, 'scene' | 'leg' | 'aircraft' | 'start'>): Estimate {
  const { belief, isPlaced, atMs, headingDeg, plan } = given.start;
  return {
    ...given,
    readings: [],
    belief,
    isPlaced,
    atMs,
    headingDeg,
    plan,
    takenIn: 0,
    doubt: null,
    isLost: false,
    flag: null,
    lastToAtMs: null,
    hasPassed: false,
  };
}

/**
 * The estimate with one more reading.
 *
 * A reading older than the last is sorted in and everything after it is worked out again; a duplicate changes
 * nothing; a second reading of the same moment only adds what is new in it.
 */
export function addReading(estimate: Estimate, reading: Reading): Estimate {
  const last = estimate.readings.at(-1);
  if (last && reading.atMs < last.atMs) {
    return inTimeOrder([...estimate.readings, reading]).reduce(addReading, fromStart(estimate));
  }
  if (isDuplicate(estimate.readings, reading)) return estimate;
  const readings = [...estimate.readings, reading];
  const news = onlyNewPart(estimate.readings, reading);
  const atTime = carriedOn(estimate, reading);
  const station = reading.station;
  if (station && station.ident !== estimate.leg.leg.station.ident) {
    const own = estimate.leg.leg.station;
    const belief = atTime.isPlaced
      ? takeInCrossBearing(atTime.belief, atTime.scene, own, news)
      : atTime.belief;
    return withPlan({ ...atTime, readings, belief });
  }
  return withPlan({ ...taken(atTime, news), readings });
}

/** The estimate after all readings: the fold of `addReading` over them in time order. */
export function estimate(
  readings: readonly Reading[],
  leg: DatedLeg,
  aircraft: Aircraft,
  wind?: Wind,
  carried?: Estimate,
): Estimate {
  return inTimeOrder(readings).reduce(addReading, startEstimate(leg, aircraft, wind, carried));
}

function inTimeOrder(readings: readonly Reading[]): readonly Reading[] {
  return [...readings].sort((one, other) => one.atMs - other.atMs);
}

/** The estimate carried on to the time of a reading by what was flown since the last. */
function carriedOn(before: Estimate, reading: Reading): Estimate {
  const sinceS = before.atMs === null ? 0 : Math.max(0, (reading.atMs - before.atMs) / MS_PER_S);
  const readDeg = reading.headingDeg ?? null;
  if (before.headingDeg === null || before.atMs === null) {
    return { ...before, atMs: reading.atMs, headingDeg: readDeg };
  }
  const { path, headingDeg } = flown(before.headingDeg, before.plan, readDeg, sinceS);
  const onward = { ...before, atMs: reading.atMs, headingDeg };
  if (!before.isPlaced) return onward;
  if (sinceS > LONGEST_GAP_S) return { ...onward, isPlaced: false, doubt: null, takenIn: 0 };
  const { scene } = before;
  const onwardBelief = (belief: Belief): Belief => {
    const turned = turnedBy(path, planeFromMagneticDeg(scene, placeOf(belief.mean)));
    return predict(belief, turned, scene.trueAirspeedKt);
  };
  return {
    ...onward,
    belief: onwardBelief(before.belief),
    doubt: before.doubt && { ...before.doubt, otherwise: onwardBelief(before.doubt.otherwise) },
  };
}

/** The estimate, carried on to the time of a reading, after taking it in. */
function taken(atTime: Estimate, reading: Reading): Estimate {
  const { scene } = atTime;
  if (!atTime.isPlaced) {
    const seen = withFlag(atTime, reading, false);
    if (!tellsPlace(reading)) return seen;
    const placed = placeFromReading(atTime.belief, scene, reading);
    const belief = takeIn(placed, scene, reading, FITS);
    return { ...seen, belief, isPlaced: true, takenIn: 1, isLost: false };
  }
  const corrected = afterPassage(atTime.belief, scene, reading, passageSince(atTime));
  const belief = corrected ?? atTime.belief;
  const misfit = judge(belief, scene, reading);
  const seen = withFlag(atTime, reading, misfit.flag);
  if (!isMisfit(misfit)) {
    const takenIn = atTime.takenIn + 1;
    const updated = takeIn(belief, scene, reading, misfit);
    return { ...seen, belief: updated, doubt: null, isLost: false, takenIn };
  }
  const verdict = weigh(belief, scene, reading, misfit, {
    doubt: atTime.doubt,
    predictedOtherwise: atTime.doubt?.otherwise ?? null,
    takenIn: atTime.takenIn,
    lastDmeNm: lastDmeNm(atTime),
  });
  const takenIn = verdict.isConfirmed || verdict.isLost ? 1 : atTime.takenIn;
  return { ...seen, belief: verdict.belief, doubt: verdict.doubt, isLost: verdict.isLost, takenIn };
}

function tellsPlace(reading: Reading): boolean {
  return reading.flag !== 'off' || reading.dmeNm !== undefined;
}

function lastDmeNm(estimate: Estimate): number | null {
  return estimate.readings.findLast((each) => each.dmeNm !== undefined)?.dmeNm ?? null;
}

/** Since when the flag can have turned: the last TO, unless FROM has been seen after it. */
function passageSince(estimate: Estimate): number | null {
  return estimate.hasPassed ? null : estimate.lastToAtMs;
}

/** What the flag tells about having passed the station; nothing where it contradicts the geometry. */
function withFlag(estimate: Estimate, reading: Reading, isContradicting: boolean): Estimate {
  const { scene } = estimate;
  const lastToAtMs = reading.flag === 'to' ? reading.atMs : estimate.lastToAtMs;
  const tellsPassage =
    scene.isTo && reading.flag !== 'off' && !isContradicting && isAlongCourse(scene, reading);
  const hasPassed = tellsPassage ? reading.flag === 'from' : estimate.hasPassed;
  return { ...estimate, flag: reading.flag, lastToAtMs, hasPassed };
}

/** The estimate with the headings that the pilot is told after this reading. */
function withPlan(estimate: Estimate): Estimate {
  if (!estimate.isPlaced) return { ...estimate, plan: null };
  const { belief, scene, headingDeg, hasPassed } = estimate;
  const plan = choosePlan(belief.mean, scene, headingDeg, cadenceS(estimate.readings), hasPassed);
  return { ...estimate, plan, headingDeg: headingDeg ?? plan.headingDeg };
}
