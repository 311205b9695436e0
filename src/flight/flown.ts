import type { FieldProblem } from '../base/result.ts';
import type { Leg } from '../leg/leg.ts';
import { datedLeg } from '../leg/leg-frame.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Advice } from '../procedure/advice.ts';
import { adviceOf } from '../procedure/advise.ts';
import { passageAdviceOf } from '../procedure/passage.ts';
import type { Manner } from '../speech/numbers.ts';
import { startEstimate } from '../track/estimate.ts';
import type { Estimate } from '../track/estimate.ts';
import { carriedOnTo } from '../track/onward.ts';
import type { Flag } from '../track/reading.ts';
import type { Chain } from './chain.ts';
import type { PlanEvent } from './event.ts';
import { carriedForLeg, forecastOf } from './forecast.ts';
import type { FlightState, LegProgress, ReadingRecord } from './state.ts';

/** Where a flight stands after some event, with all that the next event needs. */
export interface Flown {
  readonly plan: PlanEvent | null;
  readonly legIndex: number;
  readonly legs: readonly LegProgress[];
  /** The leg being flown, worked out for its day. */
  readonly dated: DatedLeg | null;
  /** Why the leg could not be worked out. */
  readonly legProblem: readonly FieldProblem[];
  /** Of the leg being flown. */
  readonly estimate: Estimate | null;
  /** Of the leg before, as this leg took it over. */
  readonly carried: Estimate | null;
  /** TO or FROM as read last on the course of this leg; null: not yet. */
  readonly flag: Exclude<Flag, 'off'> | null;
  /** When OFF was read, if nothing has shown the needle alive since. */
  readonly offAtMs: number | null;
  /** The last reading was the passage that began this leg. */
  readonly hasJustPassed: boolean;
  /** The passage that began this leg, until FROM is read on it: where the flight was when it was read. */
  readonly passedFrom: {
    readonly flown: Flown;
    readonly atMs: number;
    readonly nextStartedAtMs: number | null;
  } | null;
  readonly advice: Advice | null;
  readonly readings: Chain<ReadingRecord>;
  readonly notes: Chain<FlightState['notes'][number]>;
  readonly finishedAtMs: number | null;
}

/** Before the first event. */
export const NOTHING_FLOWN: Flown = {
  plan: null,
  legIndex: 0,
  legs: [],
  dated: null,
  legProblem: [],
  estimate: null,
  carried: null,
  flag: null,
  offAtMs: null,
  hasJustPassed: false,
  passedFrom: null,
  advice: null,
  readings: null,
  notes: null,
  finishedAtMs: null,
};

/** A leg that nobody has begun. */
export const FRESH_LEG: LegProgress = {
  checks: {},
  identConfirmedAtMs: null,
  startedAtMs: null,
  passageAtMs: null,
};

/** The leg being flown. */
export function legOf(flown: Flown): Leg | null {
  return flown.plan?.legs[flown.legIndex] ?? null;
}

/** The same flight with something changed in the progress of one leg. */
export function withLeg(flown: Flown, index: number, change: Partial<LegProgress>): Flown {
  return {
    ...flown,
    legs: flown.legs.map((leg, i) => (i === index ? { ...leg, ...change } : leg)),
  };
}

/** The leg of that index of the plan for its day, or why there is none. */
export function datedOf(plan: PlanEvent, legIndex: number): Pick<Flown, 'dated' | 'legProblem'> {
  const leg = plan.legs[legIndex];
  if (leg === undefined) return { dated: null, legProblem: [] };
  const dated = datedLeg(leg, plan.dateIso);
  return dated.ok
    ? { dated: dated.value, legProblem: [] }
    : { dated: null, legProblem: dated.problem };
}

/** The flight on another leg, with what the leg before has shown carried over. */
export function onLeg(flown: Flown, legIndex: number, atMs: number): Flown {
  const { plan } = flown;
  if (plan === null) return flown;
  const before = flown.estimate ?? flown.carried;
  // A leg that is begun between two readings is begun from where the aircraft is by then.
  const onwards = before && carriedOnTo(before, atMs);
  const carried = carriedForLeg(plan, onwards, flown.legIndex, legIndex);
  const { dated, legProblem } = datedOf(plan, legIndex);
  const estimate =
    dated !== null && carried !== null ? freshEstimate(plan, legIndex, dated, carried) : null;
  const moved = {
    ...flown,
    legIndex,
    dated,
    legProblem,
    carried,
    estimate,
    flag: null,
    offAtMs: null,
    hasJustPassed: false,
    passedFrom: null,
    advice: null,
  };
  return withLeg(moved, legIndex, { startedAtMs: atMs, passageAtMs: null });
}

/** What is known before the first reading of a leg. */
export function freshEstimate(
  plan: PlanEvent,
  legIndex: number,
  dated: DatedLeg,
  carried: Estimate | null,
): Estimate {
  const forecast = forecastOf(plan, legIndex);
  return startEstimate(dated, plan.aircraft, forecast, carried ?? undefined);
}

/** The answer that the flight as it stands leads to; null while nothing is known of the leg. */
export function answerOf(flown: Flown, manner: Manner, previous?: Advice): Advice | null {
  const { plan, dated, estimate } = flown;
  if (plan === null || dated === null || estimate === null) return null;
  const identConfirmed = flown.legs[flown.legIndex]?.identConfirmedAtMs !== null;
  const next = plan.legs[flown.legIndex + 1];
  const told = {
    identConfirmed,
    manner,
    ...(previous === undefined ? {} : { previous }),
    ...(next === undefined ? {} : { next }),
  };
  const advice = adviceOf(estimate, dated, plan.aircraft, told);
  const before = plan.legs[flown.legIndex - 1];
  return flown.hasJustPassed && before !== undefined
    ? passageAdviceOf(advice, dated.leg, before, manner)
    : advice;
}
