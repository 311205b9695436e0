import type { FlightEvent, ReadingCorrectedEvent } from './event.ts';

/** One event of the log with what later events did to it. */
export interface LogLine {
  readonly event: FlightEvent;
  /** Taken back, and not brought back since. */
  readonly isTakenBack: boolean;
  /** The correction of this reading that stands. */
  readonly correction: ReadingCorrectedEvent | null;
}

/**
 * The events in the one order of a log: by time, then by id; each id once.
 *
 * The order in which they are given does not matter, so logs of two devices merge by union. Two different
 * events with the same id cannot be told apart by their makers: the earlier one, or else the one whose
 * text sorts first, stands on every device.
 */
export function orderEvents(events: readonly FlightEvent[]): readonly FlightEvent[] {
  const byId = new Map<string, FlightEvent>();
  for (const event of events) {
    const known = byId.get(event.id);
    if (known === undefined || isBeforeTwin(event, known)) byId.set(event.id, event);
  }
  return [...byId.values()].sort(compareEvents);
}

/** Negative when `one` comes first: by time, then by id. */
function compareEvents(one: FlightEvent, other: FlightEvent): number {
  if (one.atMs !== other.atMs) return one.atMs - other.atMs;
  return one.id < other.id ? -1 : one.id > other.id ? 1 : 0;
}

function isBeforeTwin(event: FlightEvent, known: FlightEvent): boolean {
  if (event === known) return false;
  if (event.atMs !== known.atMs) return event.atMs < known.atMs;
  return JSON.stringify(event) < JSON.stringify(known);
}

/**
 * Each event of an ordered log with what later events did to it.
 *
 * A take-back works on an event of any time, since the clocks of two devices differ; only the take-back
 * of a take-back must come later in the order than what it takes back, or two could cancel each other.
 */
export function linesOf(ordered: readonly FlightEvent[]): readonly LogLine[] {
  const takenBack = takenBackIds(ordered);
  const corrections = new Map<string, ReadingCorrectedEvent>();
  for (const event of ordered) {
    if (event.kind === 'reading-corrected' && !takenBack.has(event.id)) {
      corrections.set(event.readingId, event);
    }
  }
  return ordered.map((event) => ({
    event,
    isTakenBack: takenBack.has(event.id),
    correction: event.kind === 'reading' ? (corrections.get(event.id) ?? null) : null,
  }));
}

function takenBackIds(ordered: readonly FlightEvent[]): ReadonlySet<string> {
  const takenBack = new Set<string>();
  // Newest first: whatever takes a take-back back has then been seen before it.
  for (const event of [...ordered].reverse()) {
    if (event.kind === 'taken-back' && !takenBack.has(event.id)) takenBack.add(event.eventId);
  }
  return takenBack;
}

/** Whether two lines say the same, so that what was folded from one holds for the other. */
export function isSameLine(one: LogLine, other: LogLine): boolean {
  return (
    one.event === other.event &&
    one.isTakenBack === other.isTakenBack &&
    one.correction === other.correction
  );
}
