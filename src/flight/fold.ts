import { ICAO_MANNER } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import { listOf } from './chain.ts';
import type { FlightEvent } from './event.ts';
import { NOTHING_FLOWN } from './flown.ts';
import type { Flown } from './flown.ts';
import { isSameLine, linesOf, orderEvents } from './log.ts';
import type { LogLine } from './log.ts';
import type { FlightState } from './state.ts';
import { step } from './step.ts';
import { undoableIn } from './undoable.ts';

/** A log and what it comes to, with the steps in between, so that one more event costs one more step. */
export interface Fold {
  /** In order, each id once. */
  readonly events: readonly FlightEvent[];
  readonly state: FlightState;
  /** How the pilot says the decimal sign; the words of the answers depend on it. */
  readonly manner: Manner;
  readonly lines: readonly LogLine[];
  /** The flight after each line. */
  readonly steps: readonly Flown[];
}

/** A flight of which nothing is known. */
export const emptyFlight: FlightState = stateOf(NOTHING_FLOWN, []);

/** The fold of no events. */
export function emptyFold(manner: Manner = ICAO_MANNER): Fold {
  return { events: [], state: emptyFlight, manner, lines: [], steps: [] };
}

/**
 * What a log comes to: the same for the same set of events, in whatever order and however often given.
 */
export function foldFlight(
  events: readonly FlightEvent[],
  manner: Manner = ICAO_MANNER,
): FlightState {
  return addEvents(emptyFold(manner), events).state;
}

/** The fold with one more event; see `addEvents`. */
export function addEvent(fold: Fold, event: FlightEvent): Fold {
  return addEvents(fold, [event]);
}

/**
 * The fold with more events: exactly what folding all of them anew would give, by stepping on from the
 * first line that they change. Events that are known already change nothing (the same fold comes back).
 */
export function addEvents(fold: Fold, added: readonly FlightEvent[]): Fold {
  const events = orderEvents([...fold.events, ...added]);
  const lines = linesOf(events);
  const kept = sameLines(fold.lines, lines);
  if (kept === lines.length && kept === fold.lines.length) return fold;
  const steps = fold.steps.slice(0, kept);
  for (const line of lines.slice(kept)) {
    steps.push(step(steps.at(-1) ?? NOTHING_FLOWN, line, fold.manner));
  }
  const state = stateOf(steps.at(-1) ?? NOTHING_FLOWN, lines);
  return { events, state, manner: fold.manner, lines, steps };
}

function sameLines(before: readonly LogLine[], after: readonly LogLine[]): number {
  const changed = before.findIndex((line, i) => {
    const other = after[i];
    return other === undefined || !isSameLine(line, other);
  });
  return changed < 0 ? before.length : changed;
}

function stateOf(flown: Flown, lines: readonly LogLine[]): FlightState {
  const { plan, legIndex, legs, estimate, advice, finishedAtMs } = flown;
  return {
    plan,
    legIndex,
    legs,
    readings: listOf(flown.readings),
    estimate,
    advice,
    notes: listOf(flown.notes),
    finishedAtMs,
    undoable: undoableIn(lines),
  };
}
