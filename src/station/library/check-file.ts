import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import { checkEventsInOrder, type CheckEvent } from './check-log.ts';
import { enterCheck } from './enter-check.ts';
import { CHECK_KINDS, type CheckRules, type ReceiverCheck } from './receiver-check.ts';

/** What the file of a log of receiver checks says of itself. */
const ABOUT = 'receiver checks';
const EDITION = 1;

/** A log of receiver checks as a file: JSON, one list of events. */
export function writeCheckLog(events: readonly CheckEvent[]): string {
  return JSON.stringify(
    { about: ABOUT, edition: EDITION, events: checkEventsInOrder(events) },
    null,
    1,
  );
}

/**
 * Reads the file of a log of receiver checks.
 *
 * `nowUtc`: `2026-11-25T14:05`. Refused as a whole, with the field that is wrong, when it is not such a file
 * or has a line that could not have been written: half a log would show a receiver as checked, or as due,
 * when it is not.
 */
export function readCheckLog(text: string, nowUtc: string): Result<readonly CheckEvent[]> {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return refuse([problem('file', 'a log of receiver checks saved from this page')]);
  }
  if (!isRecord(raw) || raw['about'] !== ABOUT || !Array.isArray(raw['events']))
    return refuse([problem('file', 'a log of receiver checks saved from this page')]);
  if (raw['edition'] !== EDITION)
    return refuse([problem('edition', `edition ${EDITION} of the file`)]);
  const events: CheckEvent[] = [];
  for (const [index, line] of (raw['events'] as readonly unknown[]).entries()) {
    const event = readEvent(line, nowUtc);
    if (!event.ok)
      return refuse(
        event.problem.map((each) => ({ ...each, field: `line ${index + 1}: ${each.field}` })),
      );
    events.push(event.value);
  }
  return accept(checkEventsInOrder(events));
}

function readEvent(line: unknown, nowUtc: string): Result<CheckEvent> {
  if (!isRecord(line)) return refuse([problem('line', 'a line of a log')]);
  const { id, atMs, kind } = line;
  if (!isId(id)) return refuse([problem('id', 'the id of a line')]);
  if (!isInstant(atMs)) return refuse([problem('atMs', 'a time in milliseconds')]);
  if (kind === 'struck' || kind === 'brought-back') {
    const { checkId } = line;
    if (!isId(checkId)) return refuse([problem('checkId', 'the id of a check')]);
    return accept({ id, atMs, kind, checkId });
  }
  if (kind !== 'checked') return refuse([problem('kind', 'checked, struck or brought-back')]);
  const given = readFields(line['check']);
  if (!given.ok) return given;
  const check = enterCheck(given.value, nowUtc);
  return check.ok ? accept({ id, atMs, kind, check: check.value }) : check;
}

const TEXTS = [
  'dateIso',
  'timeUtc',
  'place',
  'station',
  'aircraft',
  'receiver',
  'who',
] as const satisfies readonly (keyof ReceiverCheck)[];

/** The fields with their types; `enterCheck` sees to what stands in them. */
function readFields(raw: unknown): Result<ReceiverCheck> {
  if (!isRecord(raw)) return refuse([problem('check', 'a check')]);
  const kind = CHECK_KINDS.find((each) => each === raw['kind']);
  if (kind === undefined) return refuse([problem('kind', 'a kind of check')]);
  const rules = readRules(raw['rules']);
  if (rules === null) return refuse([problem('rules', 'the rules that it was judged by')]);
  const wrong = TEXTS.find((field) => typeof raw[field] !== 'string');
  if (wrong !== undefined) return refuse([problem(wrong, 'a text')]);
  const text = (field: (typeof TEXTS)[number] | 'otherReceiver'): string => String(raw[field]);
  return accept({
    kind,
    rules,
    dateIso: text('dateIso'),
    timeUtc: text('timeUtc'),
    place: text('place'),
    station: text('station'),
    aircraft: text('aircraft'),
    receiver: text('receiver'),
    who: text('who'),
    otherReceiver: typeof raw['otherReceiver'] === 'string' ? text('otherReceiver') : null,
    expectedDeg: asNumber(raw['expectedDeg']),
    indicatedDeg: asNumber(raw['indicatedDeg']),
  });
}

/** Rules as stored; null for what are none. */
function readRules(raw: unknown): CheckRules | null {
  if (!isRecord(raw)) return null;
  const { state } = raw;
  if (state === 'us' || state === 'canada') return { state };
  if (state !== 'own') return null;
  return {
    state,
    permittedDeg: asNumber(raw['permittedDeg']),
    validDays: asNumber(raw['validDays']),
  };
}

function asNumber(value: unknown): number {
  return typeof value === 'number' ? value : Number.NaN;
}

function problem(field: string, expected: string): FieldProblem {
  return { field, expected, got: '' };
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isInstant(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= 8.64e15;
}

function isId(value: unknown): value is string {
  return typeof value === 'string' && /^[0-9A-HJKMNP-TV-Z]{26}$/.test(value);
}
