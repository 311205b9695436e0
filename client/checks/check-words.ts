import type { ReceiverDue } from '../../src/station/library/check-due.ts';
import {
  outcomeOf,
  type CheckKind,
  type CheckRules,
  type ReceiverCheck,
} from '../../src/station/library/receiver-check.ts';

/** What a kind of check is called, and how it is made. */
export const KIND_WORDS: Readonly<
  Record<CheckKind, { readonly name: string; readonly how: string }>
> = {
  'test-signal': {
    name: 'Test signal (VOT)',
    how: 'Tune the test signal, centre the needle: 0 FROM or 180 TO. An RMI shows 180 at any OBS: choose TO. One radiated by a repair station also needs the entry of its representative.',
  },
  'ground-checkpoint': {
    name: 'Ground checkpoint',
    how: 'Stand on the designated point, centre the needle, read the radial.',
  },
  'airborne-checkpoint': {
    name: 'Airborne checkpoint',
    how: 'Over the designated landmark, centre the needle, read the radial.',
  },
  'airway-point': {
    name: 'Over a prominent point on an airway',
    how: 'Low, over a prominent point on the centreline, best more than 20 NM from the station.',
  },
  'two-receivers': {
    name: 'Two receivers against each other',
    how: 'Both on the same station: centre each and compare. Separate receivers; a shared antenna is allowed.',
  },
};

/** Whose rule it is. */
export function rulesWords(rules: CheckRules): string {
  if (rules.state === 'own')
    return `own figures, ${degrees(rules.permittedDeg)} and ${rules.validDays} days`;
  return rules.state === 'us' ? '14 CFR 91.171' : 'Canada';
}

/** What a check comes to, in words: `Passes: 2° high, 4° permitted.` */
export function outcomeWords(
  check: Pick<ReceiverCheck, 'kind' | 'expectedDeg' | 'indicatedDeg' | 'rules'>,
): string {
  const { errorDeg, permittedDeg, isPassed, isReciprocal } = outcomeOf(check);
  const off = errorWords(errorDeg, check.kind);
  if (isPassed === null || permittedDeg === null)
    return `${off}. No figure is known here for ${rulesWords(check.rules)}: look it up, and choose own figures.`;
  const words = `${isPassed ? 'Passes' : 'Fails'}: ${off}, ${degrees(permittedDeg)} permitted.`;
  return isReciprocal ? `${words} Nearly opposite: was one TO and the other FROM?` : words;
}

function errorWords(errorDeg: number, kind: CheckKind): string {
  if (errorDeg === 0) return kind === 'two-receivers' ? 'no difference' : 'no error';
  const size = degrees(Math.abs(errorDeg));
  if (kind === 'two-receivers') return `${size} apart`;
  return `${size} ${errorDeg > 0 ? 'high' : 'low'}`;
}

/** As many figures as it has: 4.04 shown as 4.0 would look like a pass. */
function degrees(angleDeg: number): string {
  return `${Number(angleDeg.toFixed(6))}°`;
}

/** Where a receiver stands, in words. */
export function dueWords({ standing, last, lastDayIso, daysLeft }: ReceiverDue): string {
  const rule = rulesWords(last.rules);
  if (standing === 'failed') {
    const which = last.kind === 'two-receivers' ? ' One of the two is off.' : '';
    return `Failed on ${dayWords(last.dateIso)}.${which} Not for IFR until a check passes; have it looked at.`;
  }
  if (lastDayIso === null || daysLeft === null)
    return `Checked on ${dayWords(last.dateIso)}. How long that stands cannot be told here for ${rule}.`;
  if (standing === 'overdue') return `Overdue. The last day was ${dayWords(lastDayIso)} (${rule}).`;
  return `Next due by ${dayWords(lastDayIso)}: ${leftWords(daysLeft)} (${rule}).`;
}

/** Told before a flight: a receiver whose check failed or is over, or will be in three days; null: it is in order. */
export function dueNotice(due: ReceiverDue): string | null {
  const { aircraft, receiver, standing, lastDayIso, daysLeft, last } = due;
  const name = ['VOR receiver', aircraft, receiver].filter((each) => each !== '').join(' ');
  if (standing === 'failed')
    return `${name} failed its check on ${dayWords(last.dateIso)}: not for IFR.`;
  if (lastDayIso === null || daysLeft === null || daysLeft > 3) return null;
  if (standing === 'overdue')
    return `${name}: check overdue, the last day was ${dayWords(lastDayIso)}. Check it before IFR.`;
  return `${name}: check due by ${dayWords(lastDayIso)}, ${leftWords(daysLeft)}.`;
}

function leftWords(daysLeft: number): string {
  if (daysLeft === 0) return 'that is today';
  return daysLeft === 1 ? '1 day left' : `${daysLeft} days left`;
}

/** A day as it is written: `25 Nov 2026`. */
export function dayWords(dateIso: string): string {
  return new Date(`${dateIso}T00:00Z`).toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  });
}

/** A moment as the checks are written, UTC: `2026-11-25T14:05`. */
export function minuteUtc(atMs: number): string {
  return new Date(atMs).toISOString().slice(0, 16);
}
