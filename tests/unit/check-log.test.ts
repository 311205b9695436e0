import { describe, expect, it, test } from 'vitest';
import { readCheckLog, writeCheckLog } from '../../src/station/library/check-file.ts';
import { checksOf, type CheckEvent } from '../../src/station/library/check-log.ts';
import { enterCheck } from '../../src/station/library/enter-check.ts';
import type { ReceiverCheck } from '../../src/station/library/receiver-check.ts';

const NOW = '2026-11-25T12:00';

const CHECK: ReceiverCheck = {
  kind: 'two-receivers',
  dateIso: '2026-11-24',
  timeUtc: '09:30',
  place: 'Over the harbour',
  station: 'QEV 113.35',
  aircraft: '',
  receiver: 'No. 1',
  otherReceiver: 'No. 2',
  expectedDeg: 90,
  indicatedDeg: 92,
  who: 'A. Pilot',
  rules: { state: 'own', permittedDeg: 4, validDays: 30 },
};

const idOf = (index: number): string => `01KAXXXXXXXXXXXXXXXXXXXX${String(index).padStart(2, '0')}`;

const checked = (index: number, part: Partial<ReceiverCheck> = {}): CheckEvent => ({
  id: idOf(index),
  atMs: index,
  kind: 'checked',
  check: { ...CHECK, ...part },
});

const word = (index: number, kind: 'struck' | 'brought-back', about: number): CheckEvent => ({
  id: idOf(index),
  atMs: index,
  kind,
  checkId: idOf(about),
});

describe('a check as entered', () => {
  it('is kept with its time and texts put in order', () => {
    const entered = enterCheck({ ...CHECK, timeUtc: ' 930 ', place: ' Pier ' }, NOW);
    expect(entered).toMatchObject({ ok: true, value: { timeUtc: '09:30', place: 'Pier' } });
  });

  test.each([
    ['a day that is none', { dateIso: '2026-02-30' }, ['dateIso']],
    ['a day to come', { dateIso: '2026-11-26' }, ['dateIso']],
    ['a time to come', { dateIso: '2026-11-25', timeUtc: '12:01' }, ['timeUtc']],
    ['no time', { timeUtc: '25:00' }, ['timeUtc']],
    ['no place, nobody', { place: ' ', who: '' }, ['place', 'who']],
    ['a place without end', { place: 'x'.repeat(81) }, ['place']],
    [
      'bearings that are none',
      { expectedDeg: 361, indicatedDeg: Number.NaN },
      ['expectedDeg', 'indicatedDeg'],
    ],
    ['one receiver against itself', { otherReceiver: 'no. 1' }, ['otherReceiver']],
    ['only one of two receivers', { otherReceiver: null }, ['otherReceiver']],
    [
      'an own rule of nothing',
      { rules: { state: 'own', permittedDeg: 0, validDays: 1.5 } },
      ['permittedDeg', 'validDays'],
    ],
  ] as const)('is refused for %s, by the field', (_name, part, fields) => {
    const entered = enterCheck({ ...CHECK, ...part }, NOW);
    expect(entered.ok ? [] : entered.problem.map(({ field }) => field)).toEqual(fields);
  });

  it('forgets the other receiver where only one was checked', () => {
    const entered = enterCheck({ ...CHECK, kind: 'airway-point' }, NOW);
    expect(entered).toMatchObject({ ok: true, value: { otherReceiver: null } });
  });
});

describe('the log of receiver checks', () => {
  it('shows the newest check first, whenever it was written down', () => {
    const checks = checksOf([checked(1), checked(2, { dateIso: '2026-11-01' }), checked(3)]);
    expect(checks.map(({ id }) => id)).toEqual([idOf(3), idOf(1), idOf(2)]);
  });

  it('strikes a check through and brings it back by later lines, in whatever order they come', () => {
    const events = [checked(1), word(2, 'struck', 1)];
    expect(checksOf(events.toReversed())).toMatchObject([{ id: idOf(1), struckAtMs: 2 }]);
    expect(checksOf([word(3, 'brought-back', 1), ...events])).toMatchObject([{ struckAtMs: null }]);
    expect(checksOf([word(2, 'struck', 1)])).toEqual([]);
  });

  it('reads back from its file as it was written', () => {
    const events = [checked(1), word(2, 'struck', 1), checked(3, { rules: { state: 'us' } })];
    expect(readCheckLog(writeCheckLog(events), NOW)).toEqual({ ok: true, value: events });
  });

  test.each([
    ['no JSON', 'date,place', 'file'],
    ['another JSON', '{"flights": []}', 'file'],
    ['a later edition', '{"about":"receiver checks","edition":2,"events":[]}', 'edition'],
  ])('is refused when its file is %s', (_name, text, field) => {
    const read = readCheckLog(text, NOW);
    expect(read.ok ? null : read.problem[0]?.field).toBe(field);
  });

  test.each([
    ['an unknown kind of line', { kind: 'rubbed-out' }, 'line 2: kind'],
    ['an id of another make', { id: '7' }, 'line 2: id'],
    ['no check in it', { check: 4 }, 'line 2: check'],
    ['an unknown kind of check', { check: { ...CHECK, kind: 'guess' } }, 'line 2: kind'],
    ['rules of nobody', { check: { ...CHECK, rules: { state: 'moon' } } }, 'line 2: rules'],
    ['a text that is none', { check: { ...CHECK, who: 7 } }, 'line 2: who'],
    ['a bearing that is none', { check: { ...CHECK, indicatedDeg: '92' } }, 'line 2: indicatedDeg'],
    ['a check to come', { check: { ...CHECK, dateIso: '2027-01-01' } }, 'line 2: dateIso'],
  ])('is refused as a whole, with its line, for %s', (_name, part, field) => {
    const events = [checked(1), { ...checked(2), ...part }];
    const text = JSON.stringify({ about: 'receiver checks', edition: 1, events });
    const read = readCheckLog(text, NOW);
    expect(read.ok ? null : read.problem[0]?.field).toBe(field);
  });
});
