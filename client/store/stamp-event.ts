import { monotonicFactory } from 'ulid';
import type { FlightEvent, PlanEvent } from '../../src/flight/event.ts';

type WithoutStamp<Event> = Event extends unknown ? Omit<Event, 'id' | 'atMs'> : never;

/** What happened, before the store gives it an id and a time. */
export type EventFields = WithoutStamp<FlightEvent>;

/** The plan of a flight, before the store gives it an id and a time. */
export type PlanFields = Omit<PlanEvent, 'kind' | 'id' | 'atMs'>;

const nextUlid = monotonicFactory();

/** A clock that another device or a correction has put back by less than this is held, not followed. */
const CLOCK_SLACK_MS = 10_000;

/** Gives an event its id and its time: the only place where the clock enters a flight. */
export function stamp(fields: EventFields, lastAtMs: number): FlightEvent {
  const nowMs = Date.now();
  // An event is later than what the pilot saw when making it, even if another device's clock runs ahead.
  const atMs = nowMs < lastAtMs && lastAtMs - nowMs < CLOCK_SLACK_MS ? lastAtMs + 1 : nowMs;
  return { ...fields, id: nextUlid(atMs), atMs };
}
