import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import type { PracticeEvent } from './event.ts';
import { inOrder } from './practice.ts';

/** What the file of a practice log says of itself. */
const ABOUT = 'ident practice';
const EDITION = 1;

/** A practice log as a file: JSON, one list of events. */
export function writePracticeLog(events: readonly PracticeEvent[]): string {
  return JSON.stringify({ about: ABOUT, edition: EDITION, events: inOrder(events) }, null, 1);
}

/**
 * Reads the file of a practice log.
 *
 * Refused as a whole, with the field that is wrong, when it is not JSON, not such a file, or has an event
 * that could not have been written: half a log would give a wrong picture of what is known.
 */
export function readPracticeLog(text: string): Result<readonly PracticeEvent[]> {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return refuse([problem('file', 'a practice log that was saved from this page', text)]);
  }
  if (!isRecord(raw) || raw['about'] !== ABOUT || !Array.isArray(raw['events'])) {
    return refuse([problem('file', 'a practice log that was saved from this page', raw)]);
  }
  if (raw['edition'] !== EDITION) {
    return refuse([problem('edition', `edition ${EDITION} of the file`, raw['edition'])]);
  }
  const events: readonly unknown[] = raw['events'];
  const wrong = events.findIndex((event) => !isPracticeEvent(event));
  if (wrong >= 0) {
    return refuse([problem(`events.${wrong}`, 'a line of a practice log', events[wrong])]);
  }
  return accept(inOrder(events.filter(isPracticeEvent)));
}

function problem(field: string, expected: string, given: unknown): FieldProblem {
  const got = typeof given === 'string' ? given : JSON.stringify(given ?? null);
  return { field, expected, got: got.slice(0, 80) };
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

type Check = (value: unknown) => boolean;

const isBetween =
  (low: number, high: number): Check =>
  (value) =>
    typeof value === 'number' && value >= low && value <= high;

const isWhole =
  (low: number, high: number): Check =>
  (value) =>
    Number.isInteger(value) && isBetween(low, high)(value);

const isOneOf =
  (...words: readonly string[]): Check =>
  (value) =>
    words.some((word) => word === value);

const orNull =
  (check: Check): Check =>
  (value) =>
    value === null || check(value);

const has =
  (fields: Readonly<Record<string, Check>>): Check =>
  (value) =>
    isRecord(value) && Object.entries(fields).every(([name, check]) => check(value[name]));

const isIdent: Check = (value) => typeof value === 'string' && /^[A-Z]{1,4}$/.test(value);
const isLetters: Check = (value) => typeof value === 'string' && /^[A-Za-z]{0,8}$/.test(value);
const isId: Check = (value) => typeof value === 'string' && /^[0-9A-HJKMNP-TV-Z]{26}$/.test(value);
const isInstant = isWhole(0, 8_640_000_000_000_000);

const isSent: Check = (value) =>
  has({ kind: isOneOf('test', 'nothing') })(value) ||
  has({ kind: isOneOf('ident', 'dme-only'), ident: isIdent })(value);

const isAnswer: Check = (value) =>
  has({ kind: isOneOf('yes', 'no', 'not-identified') })(value) ||
  has({ kind: isOneOf('letters'), letters: isLetters })(value);

const isQuestion = has({
  sent: isSent,
  plate: orNull(isIdent),
  purpose: isOneOf('letters', 'plate', 'noise', 'voice'),
  letterWpm: isBetween(4, 20),
  wpm: isBetween(2, 20),
  toneHz: isBetween(300, 3000),
  snrDb: orNull(isBetween(-40, 60)),
  voiceDb: orNull(isBetween(-40, 60)),
  isUneven: (value) => typeof value === 'boolean',
  seed: isWhole(0, 0xffff_ffff),
});

const KINDS: Readonly<Record<PracticeEvent['kind'], Check>> = {
  started: has({
    about: isOneOf('letters', 'mixed', 'noise'),
    pace: isOneOf('way-in', 'on-air'),
    length: isWhole(1, 1000),
  }),
  asked: has({ question: isQuestion }),
  answered: has({
    questionId: isId,
    answer: isAnswer,
    tookS: isBetween(0, 1e6),
    plays: isWhole(0, 10_000),
  }),
  ended: () => true,
  opened: has({ groups: isWhole(1, 4) }),
};

function isPracticeEvent(value: unknown): value is PracticeEvent {
  if (!has({ id: isId, atMs: isInstant })(value) || !isRecord(value)) return false;
  const { kind } = value;
  if (typeof kind !== 'string' || !Object.hasOwn(KINDS, kind)) return false;
  return KINDS[kind as PracticeEvent['kind']](value);
}
