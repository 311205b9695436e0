import { whenOf } from './check-due.ts';
import type { ReceiverCheck } from './receiver-check.ts';

interface Stamp {
  /** A ULID made where the event was born. */
  readonly id: string;
  readonly atMs: number;
}

/** A check was written down. */
export interface CheckedEvent extends Stamp {
  readonly kind: 'checked';
  readonly check: ReceiverCheck;
}

/** A check was struck through as wrong, or brought back: nothing is ever taken out of the log. */
export interface StruckEvent extends Stamp {
  readonly kind: 'struck' | 'brought-back';
  readonly checkId: string;
}

/** One line of the append-only log of receiver checks. */
export type CheckEvent = CheckedEvent | StruckEvent;

/** One check with what became of it. */
export interface LoggedCheck {
  readonly id: string;
  readonly check: ReceiverCheck;
  /** When it was struck through; null: it stands. */
  readonly struckAtMs: number | null;
}

/** The events in the order of their ids, each once. */
export function checkEventsInOrder(events: readonly CheckEvent[]): readonly CheckEvent[] {
  const byId = new Map(events.map((event) => [event.id, event]));
  return [...byId.values()].toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

/**
 * What the log comes to, the newest check first; those struck through stay in their place.
 *
 * The last word on a check decides. A word on a check that is not in the log is left aside: the check may
 * still come from another device.
 */
export function checksOf(events: readonly CheckEvent[]): readonly LoggedCheck[] {
  const checks = new Map<string, LoggedCheck>();
  const inOrder = checkEventsInOrder(events);
  for (const event of inOrder)
    if (event.kind === 'checked')
      checks.set(event.id, { id: event.id, check: event.check, struckAtMs: null });
  for (const event of inOrder) {
    if (event.kind === 'checked') continue;
    const logged = checks.get(event.checkId);
    if (logged === undefined) continue;
    checks.set(logged.id, { ...logged, struckAtMs: event.kind === 'struck' ? event.atMs : null });
  }
  return [...checks.values()].toSorted((a, b) => (sortKey(a) < sortKey(b) ? 1 : -1));
}

function sortKey({ id, check }: LoggedCheck): string {
  return `${whenOf(check)} ${id}`;
}
