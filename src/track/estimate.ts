import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Wind } from '../wind/wind.ts';
import { rangeCheckAfter, rangeCheckPlan } from './bearing-change-check.ts';
import { NO_RANGE_CHECK } from './bearing-change-record.ts';
import type { Interval } from './carry-on.ts';
import { carriedStart, isSameStation } from './carry-over.ts';
import { takeInCrossBearing } from './cross-bearing.ts';
import type { Estimate, LegStart } from './estimate-record.ts';
import { believedInterval } from './heading-doubt.ts';
import { inboundPlan } from './inbound-plan.ts';
import type { Reading } from './reading.ts';
import { isDuplicate, onlyNewPart } from './same-time.ts';
import { sceneOf } from './scene.ts';
import { airBelief } from './start-belief.ts';
import { takeReading } from './take-reading.ts';
import { withTurnOntoLine } from './onto-line.ts';
import { asBeforeStation } from './over-station.ts';
import { planOnOff } from './plan-on-off.ts';
import { tellPlan } from './tell-plan.ts';
import { watchCarriedOn } from './watch.ts';
import { NOTHING_SUSPECTED } from './watch-record.ts';

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
    ? carriedStart(carried, leg)
    : {
        belief: airBelief(wind ?? null),
        isPlaced: false,
        atMs: null,
        headingDeg: null,
        overStation: null,
      };
  return withPlan(fromStart({ scene, leg, aircraft, start }));
}

function fromStart(given: Pick<Estimate, 'scene' | 'leg' | 'aircraft' | 'start'>): Estimate {
  const { belief, isPlaced, atMs, headingDeg, overStation } = given.start;
  return {
    ...given,
    readings: [],
    belief,
    isPlaced,
    openBearing: null,
    overStation,
    atMs,
    headingDeg,
    plan: null,
    inbound: null,
    takenIn: 0,
    doubt: null,
    watch: NOTHING_SUSPECTED,
    isLost: false,
    jump: null,
    isCrossOff: false,
    headingDoubtDeg: null,
    flag: null,
    lastToAtMs: null,
    hasPassed: false,
    rangeCheck: NO_RANGE_CHECK,
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
    return inTimeOrder([...estimate.readings, reading]).reduce(
      addReading,
      withPlan(fromStart(estimate)),
    );
  }
  if (isDuplicate(estimate.readings, reading)) return estimate;
  const before = asBeforeStation(estimate);
  const { interval, headingDoubtDeg } = believedInterval(before, reading);
  const news = onlyNewPart(estimate.readings, reading);
  const taken = isCrossBearing(estimate, reading)
    ? takeCrossBearing(before, interval, news)
    : takeReading(before, interval, news);
  const after = {
    ...estimate,
    isCrossOff: false,
    headingDoubtDeg,
    ...taken,
    readings: [...estimate.readings, reading],
    atMs: reading.atMs,
    headingDeg: interval.headingDeg,
  };
  return withPlan({ ...after, rangeCheck: rangeCheckAfter(estimate, after, reading) });
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

function isCrossBearing({ leg }: Estimate, { station }: Reading): boolean {
  return station !== undefined && !isSameStation(station, leg.leg.station);
}

/** A cross-bearing moves the place, and tells nothing about the leg's own flag. */
function takeCrossBearing(
  before: Estimate,
  interval: Interval,
  reading: Reading,
): Pick<Estimate, 'belief' | 'doubt' | 'isCrossOff' | 'openBearing' | 'overStation' | 'watch'> {
  if (!before.isPlaced) return before;
  const belief = interval.carryOn(before.belief);
  // Over the station a bearing from elsewhere cannot be put beside one that is not known.
  if (before.overStation) {
    return { ...before, belief, overStation: { belief: before.belief, path: interval.path } };
  }
  const doubt = before.doubt && {
    ...before.doubt,
    otherwise: interval.carryOn(before.doubt.otherwise),
  };
  return {
    ...takeInCrossBearing(belief, before.scene, before.leg.leg, reading),
    doubt,
    watch: watchCarriedOn(before.watch, interval.carryOn),
    openBearing: null,
    overStation: null,
  };
}

/** The estimate with the headings that the pilot is told after this reading. */
function withPlan(estimate: Estimate): Estimate {
  if (!estimate.isPlaced) return { ...estimate, plan: null, inbound: null };
  const held = planOnOff(estimate) ?? rangeCheckPlan(estimate);
  const plan = held ?? withTurnOntoLine(tellPlan(estimate), estimate);
  const headingDeg = estimate.headingDeg ?? plan.headingDeg;
  return { ...estimate, plan, inbound: inboundPlan(estimate), headingDeg };
}
