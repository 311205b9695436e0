import { checkCounts, isSameTuning } from '../procedure/checklist.ts';
import type { CheckItem } from '../procedure/checklist.ts';
import type { Manner } from '../speech/numbers.ts';
import { checkReading } from '../track/check-reading.ts';
import { estimate } from '../track/estimate.ts';
import type { CheckEvent, IdentEvent, LegStartedEvent, PlanEvent } from './event.ts';
import { FRESH_LEG, answerOf, datedOf, freshEstimate, legOf, onLeg, withLeg } from './flown.ts';
import type { Flown } from './flown.ts';
import { forecastOf } from './forecast.ts';
import type { LogLine } from './log.ts';
import { readingGiven } from './read.ts';
import type { LegProgress } from './state.ts';

/**
 * The flight after one more line of its log.
 *
 * Depends on nothing else. What was taken back changes nothing but the list of readings; an event of a kind
 * that this version does not know changes nothing.
 */
export function step(flown: Flown, line: LogLine, manner: Manner): Flown {
  const { event } = line;
  if (event.kind === 'reading') return readingGiven(flown, event, line, manner);
  if (line.isTakenBack) return flown;
  switch (event.kind) {
    case 'plan':
      return planned(flown, event, manner);
    case 'check':
      return checked(flown, event, manner);
    case 'ident':
      return identified(flown, event, manner);
    case 'leg-started':
      return legStarted(flown, event, manner);
    case 'note': {
      const note = { eventId: event.id, atMs: event.atMs, text: event.text };
      return { ...flown, notes: { last: note, before: flown.notes } };
    }
    case 'finished':
      return { ...flown, finishedAtMs: event.atMs };
    case 'reading-corrected':
    case 'taken-back':
      // Already told on the line of the event that they are about.
      return flown;
    default:
      return flown;
  }
}

/**
 * A plan holds from its time on. Answers given before it stay as they were given; a leg that is still the
 * same one keeps its progress, and its readings are estimated anew with what the plan has put right.
 */
function planned(flown: Flown, plan: PlanEvent, manner: Manner): Flown {
  const keeps = (i: number): boolean => {
    const was = flown.plan?.legs[i];
    const is = plan.legs[i];
    if (was === undefined || is === undefined) return false;
    return is.direction === was.direction && isSameTuning(is, was);
  };
  const legIndex = Math.min(flown.legIndex, Math.max(0, plan.legs.length - 1));
  const isSameLeg = legIndex === flown.legIndex && keeps(legIndex);
  const legs = plan.legs.map((_, i) => (keeps(i) ? (flown.legs[i] ?? FRESH_LEG) : FRESH_LEG));
  const onPlan: Flown = {
    ...flown,
    plan,
    legs,
    legIndex,
    passedFrom: null,
    ...datedOf(plan, legIndex),
  };
  const replanned = isSameLeg ? estimatedAnew(onPlan, plan) : movedOnto(onPlan, plan);
  return { ...replanned, advice: flown.advice === null ? null : answerOf(replanned, manner) };
}

function estimatedAnew(flown: Flown, plan: PlanEvent): Flown {
  if (flown.dated === null || flown.estimate === null) return { ...flown, estimate: null };
  const readings = flown.estimate.readings.filter(
    (reading) => checkReading(reading, plan.aircraft).ok,
  );
  const { carried, dated, legIndex } = flown;
  const forecast = forecastOf(plan, legIndex);
  return {
    ...flown,
    estimate: estimate(readings, dated, plan.aircraft, forecast, carried ?? undefined),
  };
}

function movedOnto(flown: Flown, plan: PlanEvent): Flown {
  const carried = flown.estimate ?? flown.carried;
  return {
    ...flown,
    carried,
    estimate:
      flown.dated === null || carried === null
        ? null
        : freshEstimate(plan, flown.legIndex, flown.dated, carried),
    flag: null,
    offAtMs: null,
    hasJustPassed: false,
    passedFrom: null,
  };
}

function checked(flown: Flown, event: CheckEvent, manner: Manner): Flown {
  const progress = flown.legs[event.legIndex];
  if (progress === undefined) return flown;
  const { item, outcome, reason, atMs } = event;
  if (item === 'identify' && outcome === 'reopened') {
    return identStands(flown, event.legIndex, null, manner);
  }
  if (!checkCounts(item, outcome, reason, progress.identConfirmedAtMs !== null)) return flown;
  const others = without(progress.checks, item);
  const record = { outcome, atMs, ...(reason === undefined ? {} : { reason }) };
  return withLeg(flown, event.legIndex, {
    checks: outcome === 'reopened' ? others : { ...others, [item]: record },
  });
}

function identified(flown: Flown, event: IdentEvent, manner: Manner): Flown {
  if (flown.legs[event.legIndex] === undefined) return flown;
  const atMs = event.outcome === 'confirmed' ? event.atMs : null;
  return identStands(flown, event.legIndex, atMs, manner);
}

/** An ident holds, or is in doubt, for this leg and those after it as long as nothing is tuned anew. */
function identStands(
  flown: Flown,
  legIndex: number,
  confirmedAtMs: number | null,
  manner: Manner,
): Flown {
  const planLegs = flown.plan?.legs ?? [];
  const legs = [...flown.legs];
  for (let i = legIndex; i < legs.length; i += 1) {
    const [leg, before, progress] = [planLegs[i], planLegs[i - 1], legs[i]];
    if (leg === undefined || progress === undefined) break;
    if (i > legIndex && (before === undefined || !isSameTuning(leg, before))) break;
    const others = without(progress.checks, 'identify');
    const checks =
      confirmedAtMs === null
        ? others
        : { ...others, identify: { outcome: 'done' as const, atMs: confirmedAtMs } };
    legs[i] = { ...progress, checks, identConfirmedAtMs: confirmedAtMs };
  }
  const told = { ...flown, legs };
  return flown.advice === null ? told : { ...told, advice: answerOf(told, manner) };
}

function legStarted(flown: Flown, event: LegStartedEvent, manner: Manner): Flown {
  const { legIndex, atMs } = event;
  if (flown.legs[legIndex] === undefined) return flown;
  const isFlown = legIndex === flown.legIndex && legOf(flown) !== null;
  if (isFlown) return withLeg(flown, legIndex, { startedAtMs: atMs });
  const moved = onLeg(flown, legIndex, atMs);
  return { ...moved, advice: answerOf(moved, manner) };
}

type Checks = LegProgress['checks'];

function without(checks: Checks, item: CheckItem): Checks {
  return Object.fromEntries(Object.entries(checks).filter(([each]) => each !== item));
}
