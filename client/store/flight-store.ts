import type { ReadonlySignal } from '@preact/signals';
import type { FlightEvent, PlanEvent } from '../../src/flight/event.ts';
import type { FlightState } from '../../src/flight/state.ts';

type WithoutStamp<Event> = Event extends unknown ? Omit<Event, 'id' | 'atMs'> : never;

/** What happened, before the store gives it an id and a time. */
export type EventFields = WithoutStamp<FlightEvent>;

/** The plan of a flight, before the store gives it an id and a time. */
export type PlanFields = Omit<PlanEvent, 'kind' | 'id' | 'atMs'>;

/** Where everything recorded so far is safe. */
export type SyncState = 'saved-here' | 'saved-on-server' | 'catching-up';

/** One flight, open: its state follows every event, from this page or from elsewhere. */
export interface FlightStore {
  readonly id: string;
  readonly state: ReadonlySignal<FlightState>;
  /** The whole log, in time order. */
  readonly events: ReadonlySignal<readonly FlightEvent[]>;
  /** Settles when the event is on disk; `state` has followed by then. */
  append(fields: EventFields): Promise<FlightEvent>;
  readonly syncState: ReadonlySignal<SyncState>;
  /** What the server refused, in words; null: nothing. */
  readonly syncProblem: ReadonlySignal<string | null>;
  close(): void;
}

/** One line of the list of flights. */
export interface FlightSummary {
  readonly id: string;
  readonly name: string;
  readonly createdAtMs: number;
  /** False: only the server has it; it can be opened all the same. */
  readonly isHere: boolean;
}

/** Opens a flight of this device or of the server; rejects with a sentence when neither has it. */
export function openFlight(id: string): Promise<FlightStore> {
  return Promise.reject(new Error(`There is no flight ${id}.`));
}

/** The flights of this device, and those of the server when it answers, newest first. */
export function listFlights(): Promise<readonly FlightSummary[]> {
  return Promise.resolve([]);
}

/** Starts a new flight on this device with this plan; gives its id. */
export function createFlight(plan: PlanFields): Promise<string> {
  return Promise.reject(new Error(`Not yet: ${plan.name}`));
}

/** Takes a flight off this device and out of the list. */
export function deleteFlight(id: string): Promise<void> {
  return Promise.reject(new Error(`Not yet: ${id}`));
}
