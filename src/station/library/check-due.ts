import { dayLater, daysBetween } from '../../earth/calendar-day.ts';
import { outcomeOf, validityDays, type ReceiverCheck } from './receiver-check.ts';

/** Where one receiver of one aircraft stands by its last check. */
export interface ReceiverDue {
  readonly aircraft: string;
  readonly receiver: string;
  /** The last check of it. */
  readonly last: ReceiverCheck;
  /**
   * `valid`: up to and with `lastDayIso`; `overdue`: that day is over; `failed`: the last check did;
   * `cannot-tell`: the rules that it was judged by give no figure here.
   */
  readonly standing: 'valid' | 'overdue' | 'failed' | 'cannot-tell';
  /** The last day on which the check stands; null where there is none to tell. */
  readonly lastDayIso: string | null;
  /** Days from today to that day: 0 on the day itself, negative when it is over. */
  readonly daysLeft: number | null;
}

/**
 * When each receiver is next due, the most pressing first: failed, overdue, not to be told, then by the day.
 *
 * Only the last check of a receiver counts: one that failed is not outweighed by an earlier one that did
 * not. Two receivers against each other count for both: which of them is wrong cannot be told from it.
 * `todayIso`: the day in UTC, as the checks are written. *Source:* 14 CFR 91.171(a)(2) and (c).
 */
export function receiversDue(
  checks: readonly ReceiverCheck[],
  todayIso: string,
): readonly ReceiverDue[] {
  const last = new Map<string, { receiver: string; check: ReceiverCheck }>();
  for (const check of checks) {
    for (const receiver of [check.receiver, check.otherReceiver]) {
      if (receiver === null) continue;
      const key = `${sameName(check.aircraft)}\n${sameName(receiver)}`;
      const before = last.get(key);
      if (before === undefined || whenOf(before.check) <= whenOf(check))
        last.set(key, { receiver, check });
    }
  }
  return [...last.values()]
    .map(({ receiver, check }) => dueOf(receiver, check, todayIso))
    .toSorted((a, b) => urgency(a) - urgency(b));
}

/** Day and time as a text that sorts. */
export function whenOf({ dateIso, timeUtc }: ReceiverCheck): string {
  return `${dateIso}T${timeUtc}`;
}

function dueOf(receiver: string, last: ReceiverCheck, todayIso: string): ReceiverDue {
  const about = { aircraft: last.aircraft, receiver, last };
  const { isPassed } = outcomeOf(last);
  const days = validityDays(last.rules);
  if (isPassed === false) return { ...about, standing: 'failed', lastDayIso: null, daysLeft: null };
  if (isPassed === null || days === null)
    return { ...about, standing: 'cannot-tell', lastDayIso: null, daysLeft: null };
  const lastDayIso = dayLater(last.dateIso, days);
  const daysLeft = daysBetween(todayIso, lastDayIso);
  return { ...about, standing: daysLeft < 0 ? 'overdue' : 'valid', lastDayIso, daysLeft };
}

const ORDER = { failed: 0, overdue: 1, 'cannot-tell': 2, valid: 3 } as const;

function urgency({ standing, daysLeft }: ReceiverDue): number {
  return ORDER[standing] * 1e6 + (daysLeft ?? 0);
}

/** The same receiver, however it was written: `No. 1`, `no 1`. */
function sameName(name: string): string {
  return name.toLowerCase().replace(/[^\p{Letter}\p{Number}]+/gu, '');
}
