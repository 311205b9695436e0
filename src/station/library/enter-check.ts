import { rangeProblems } from '../../base/in-range.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../base/result.ts';
import { decimalYear } from '../../earth/calendar-date.ts';
import { whenOf } from './check-due.ts';
import type { CheckRules, ReceiverCheck } from './receiver-check.ts';

/** So long may a name or a place be. */
const MOST_LETTERS = 80;

const BEARING = { least: 0, most: 360, what: 'a bearing in degrees' } as const;

/**
 * A check as entered, if it can have been made: every field in its range, the texts without blanks at their
 * ends, the time as `14:05`.
 *
 * `nowUtc`: `2026-11-25T14:05`; a check cannot lie in the future. Refuses with every field that is wrong.
 */
export function enterCheck(entered: ReceiverCheck, nowUtc: string): Result<ReceiverCheck> {
  const check = tidied(entered);
  const problems = [
    ...timeProblems(check, nowUtc),
    ...textProblems(check),
    ...receiverProblems(check),
    ...rangeProblems('expectedDeg', check.expectedDeg, BEARING),
    ...rangeProblems('indicatedDeg', check.indicatedDeg, BEARING),
    ...rulesProblems(check.rules),
  ];
  return problems.length === 0 ? accept(check) : refuse(problems);
}

function tidied(entered: ReceiverCheck): ReceiverCheck {
  const { kind, otherReceiver } = entered;
  return {
    ...entered,
    timeUtc: entered.timeUtc.trim().replace(/^(\d{1,2})[:.]?(\d{2})$/, timeWith),
    place: entered.place.trim(),
    station: entered.station.trim(),
    aircraft: entered.aircraft.trim(),
    receiver: entered.receiver.trim(),
    otherReceiver: kind === 'two-receivers' ? (otherReceiver ?? '').trim() : null,
    who: entered.who.trim(),
  };
}

function timeWith(_all: string, hour: string, minute: string): string {
  return `${hour.padStart(2, '0')}:${minute}`;
}

function timeProblems(check: ReceiverCheck, nowUtc: string): FieldProblem[] {
  const day = decimalYear(check.dateIso);
  const problems = day.ok ? [] : [...day.problem];
  if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(check.timeUtc))
    problems.push({
      field: 'timeUtc',
      expected: 'a time in UTC, written like 14:05',
      got: check.timeUtc,
    });
  if (problems.length > 0 || whenOf(check) <= nowUtc) return problems;
  const field = check.dateIso > nowUtc.slice(0, 10) ? 'dateIso' : 'timeUtc';
  return [{ field, expected: 'a time that has been, in UTC', got: whenOf(check) }];
}

const TEXTS = {
  place: 'where it was made',
  station: 'the station or test signal',
  receiver: 'which receiver, like No. 1',
  who: 'the name of whoever made it',
} as const;

function textProblems(check: ReceiverCheck): FieldProblem[] {
  const needed = (Object.keys(TEXTS) as (keyof typeof TEXTS)[]).flatMap((field) =>
    lengthProblems(field, check[field], 1, TEXTS[field]),
  );
  return [...needed, ...lengthProblems('aircraft', check.aircraft, 0, 'the aircraft')];
}

function receiverProblems({ receiver, otherReceiver }: ReceiverCheck): FieldProblem[] {
  if (otherReceiver === null) return [];
  if (otherReceiver !== '' && otherReceiver.toLowerCase() === receiver.toLowerCase())
    return [
      { field: 'otherReceiver', expected: 'another receiver than the first', got: otherReceiver },
    ];
  return lengthProblems('otherReceiver', otherReceiver, 1, 'the receiver that it was held against');
}

function lengthProblems(
  field: string,
  text: string,
  least: number,
  expected: string,
): FieldProblem[] {
  if (text.length < least) return [{ field, expected, got: text }];
  if (text.length <= MOST_LETTERS) return [];
  return [{ field, expected: `${expected}, at most ${MOST_LETTERS} letters`, got: text }];
}

/**
 * What is wrong with figures of the pilot's own (fields `permittedDeg`, `validDays`): an error of 0.1 to 10 degrees,
 * 1 to 366 whole days; empty where nothing is, and for rules that are known here.
 */
export function rulesProblems(rules: CheckRules): FieldProblem[] {
  if (rules.state !== 'own') return [];
  const { permittedDeg, validDays } = rules;
  const days = rangeProblems('validDays', validDays, { least: 1, most: 366, what: 'whole days' });
  return [
    ...rangeProblems('permittedDeg', permittedDeg, {
      least: 0.1,
      most: 10,
      what: 'an error in degrees',
    }),
    ...(days.length > 0 || Number.isInteger(validDays)
      ? days
      : [{ field: 'validDays', expected: 'whole days, 1 to 366', got: `${validDays}` }]),
  ];
}
