import type { FlightEvent } from '../../src/flight/event.ts';

/** Order of a flight's log: by time, and by id where the time is the same. */
export function inLogOrder(one: FlightEvent, other: FlightEvent): number {
  if (one.atMs !== other.atMs) return one.atMs - other.atMs;
  if (one.id === other.id) return 0;
  return one.id < other.id ? -1 : 1;
}

/** A log with what was added to it. */
export interface MergedLog {
  readonly log: readonly FlightEvent[];
  /** What the log did not have before, in order. */
  readonly added: readonly FlightEvent[];
  /** True when all of `added` comes after everything that was there: the fold can go on from where it is. */
  readonly isTail: boolean;
}

/** The union of a log (in order) and events from anywhere; events that it has already change nothing. */
export function mergeLog(log: readonly FlightEvent[], incoming: readonly FlightEvent[]): MergedLog {
  const known = new Set(log.map((event) => event.id));
  const added = [...new Map(incoming.map((event) => [event.id, event])).values()]
    .filter((event) => !known.has(event.id))
    .sort(inLogOrder);
  const [first] = added;
  const last = log.at(-1);
  if (first === undefined) return { log, added, isTail: true };
  const isTail = last === undefined || inLogOrder(last, first) < 0;
  const merged = [...log, ...added];
  return { log: isTail ? merged : merged.sort(inLogOrder), added, isTail };
}
