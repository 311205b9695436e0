import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { dayLater, daysBetween } from '../../src/earth/calendar-day.ts';
import { receiversDue } from '../../src/station/library/check-due.ts';
import {
  CHECK_KINDS,
  outcomeOf,
  permittedErrorDeg,
  TEST_SIGNAL_DEG,
  validityDays,
  type CheckKind,
  type CheckRules,
  type ReceiverCheck,
} from '../../src/station/library/receiver-check.ts';

const US: CheckRules = { state: 'us' };
const CANADA: CheckRules = { state: 'canada' };

const CHECK: ReceiverCheck = {
  kind: 'ground-checkpoint',
  dateIso: '2026-11-01',
  timeUtc: '09:30',
  place: 'Run-up area',
  station: 'QEV 113.35',
  aircraft: 'Blue one',
  receiver: 'No. 1',
  otherReceiver: null,
  expectedDeg: 90,
  indicatedDeg: 92,
  who: 'A. Pilot',
  rules: US,
};

describe('permitted error: 14 CFR 91.171(b)(1)-(4) and (c), FAA AIM 1-1-4', () => {
  test.each([
    ['test-signal', 4],
    ['ground-checkpoint', 4],
    ['airborne-checkpoint', 6],
    ['airway-point', 6],
    ['two-receivers', 4],
  ] as const)(
    '%s: the limit of %d degrees passes on both sides, a tenth more fails',
    (kind, limit) => {
      const passed = (errorDeg: number): boolean | null =>
        outcomeOf({ kind, expectedDeg: 358, indicatedDeg: (358 + errorDeg + 360) % 360, rules: US })
          .isPassed;
      expect(permittedErrorDeg(kind, US)).toBe(limit);
      expect([passed(limit), passed(-limit)]).toEqual([true, true]);
      expect([passed(limit + 0.1), passed(-limit - 0.1)]).toEqual([false, false]);
    },
  );

  it('holds at the limit for every bearing in tenths of a degree, whatever rounding does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3599 }),
        fc.constantFrom(...CHECK_KINDS),
        fc.constantFrom(1, -1),
        (tenths, kind, side) => {
          const limit = permittedErrorDeg(kind, US) ?? Number.NaN;
          const at = (beyondTenths: number): boolean | null =>
            outcomeOf({
              kind,
              expectedDeg: tenths / 10,
              indicatedDeg: ((tenths + side * (limit * 10 + beyondTenths) + 3600) % 3600) / 10,
              rules: US,
            }).isPassed;
          expect(at(0)).toBe(true);
          expect(at(1)).toBe(false);
        },
      ),
    );
  });
});

describe('test signal: FAA AIM 1-1-4 b, needle centred at 0 FROM or 180 TO', () => {
  test.each([
    ['from', 2, 2, true],
    ['from', 356, -4, true],
    ['from', 355.9, -4.1, false],
    ['to', 183, 3, true],
    ['to', 175.9, -4.1, false],
  ] as const)('%s with %d on the OBS is %d degrees off', (flag, obsDeg, errorDeg, isPassed) => {
    const outcome = outcomeOf({
      kind: 'test-signal',
      expectedDeg: TEST_SIGNAL_DEG[flag],
      indicatedDeg: obsDeg,
      rules: US,
    });
    expect(outcome).toMatchObject({ errorDeg, isPassed, isReciprocal: false });
  });

  it('fails with the flag the wrong way round, and tells it from a large error', () => {
    const outcome = outcomeOf({
      kind: 'test-signal',
      expectedDeg: TEST_SIGNAL_DEG.to,
      indicatedDeg: 1,
      rules: US,
    });
    expect(outcome).toMatchObject({ isPassed: false, isReciprocal: true });
  });
});

describe('Canada: Transport Canada AIM as quoted by training pages (runup.ca and others, second hand)', () => {
  test.each([
    ['two-receivers', 4],
    ['airborne-checkpoint', 6],
    ['ground-checkpoint', 4],
  ] as const)('%s: %d degrees', (kind, limit) => {
    expect(permittedErrorDeg(kind, CANADA)).toBe(limit);
  });

  it('is not made up where no figure was found: a test signal, and for how long a check stands', () => {
    expect(outcomeOf({ ...CHECK, kind: 'test-signal', rules: CANADA }).isPassed).toBeNull();
    expect(validityDays(CANADA)).toBeNull();
    expect(receiversDue([{ ...CHECK, rules: CANADA }], '2026-11-02')[0]).toMatchObject({
      standing: 'cannot-tell',
      lastDayIso: null,
    });
  });
});

it('judges every kind by figures of the pilot’s own', () => {
  const own: CheckRules = { state: 'own', permittedDeg: 2.5, validDays: 10 };
  const passed = (kind: CheckKind, indicatedDeg: number): boolean | null =>
    outcomeOf({ kind, expectedDeg: 90, indicatedDeg, rules: own }).isPassed;
  expect(CHECK_KINDS.map((kind) => passed(kind, 92.5))).toEqual([true, true, true, true, true]);
  expect(CHECK_KINDS.every((kind) => passed(kind, 92.6) === false)).toBe(true);
  expect(receiversDue([{ ...CHECK, rules: own }], '2026-11-02')[0]?.lastDayIso).toBe('2026-11-11');
});

describe('validity: 14 CFR 91.171(a)(2), within the preceding 30 days', () => {
  test.each([
    ['2026-11-01', 'valid', 30],
    ['2026-12-01', 'valid', 0],
    ['2026-12-02', 'overdue', -1],
  ] as const)('a check of 1 November is on %s %s', (todayIso, standing, daysLeft) => {
    expect(receiversDue([CHECK], todayIso)).toMatchObject([
      { standing, daysLeft, lastDayIso: '2026-12-01' },
    ]);
  });

  it('is not kept up by an earlier pass once the last check has failed', () => {
    const failed = { ...CHECK, dateIso: '2026-11-05', indicatedDeg: 94.1 };
    expect(receiversDue([failed, CHECK], '2026-11-06')).toMatchObject([
      { standing: 'failed', lastDayIso: null },
    ]);
  });

  it('counts two receivers against each other for both: 91.171(c)', () => {
    const two: ReceiverCheck = {
      ...CHECK,
      kind: 'two-receivers',
      dateIso: '2026-11-10',
      otherReceiver: 'No. 2',
    };
    const due = receiversDue([two, { ...CHECK, receiver: 'no 1' }], '2026-11-11');
    expect(due.map(({ receiver, lastDayIso }) => [receiver, lastDayIso])).toEqual([
      ['No. 1', '2026-12-10'],
      ['No. 2', '2026-12-10'],
    ]);
  });

  it('is told apart for each aircraft, the most pressing first', () => {
    const other = { ...CHECK, aircraft: 'Red two', indicatedDeg: 80 };
    const due = receiversDue([CHECK, other], '2026-11-02');
    expect(due.map(({ aircraft, standing }) => [aircraft, standing])).toEqual([
      ['Red two', 'failed'],
      ['Blue one', 'valid'],
    ]);
  });
});

describe('days of the calendar: the Date of this machine (ECMA-262)', () => {
  it('are counted on and apart as it does, from 1900 to 2200', () => {
    const DAY_MS = 86_400_000;
    const isoOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);
    fc.assert(
      fc.property(
        fc.integer({ min: -25_567, max: 84_000 }),
        fc.integer({ min: -400, max: 400 }),
        (day, days) => {
          expect(dayLater(isoOf(day), days)).toBe(isoOf(day + days));
          expect(daysBetween(isoOf(day), isoOf(day + days))).toBe(days);
        },
      ),
    );
  });
});
