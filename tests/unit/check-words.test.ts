import { describe, expect, it } from 'vitest';
import { dueNotice } from '../../client/checks/check-words.ts';
import { receiversDue } from '../../src/station/library/check-due.ts';
import type { ReceiverCheck } from '../../src/station/library/receiver-check.ts';

const CHECK: ReceiverCheck = {
  kind: 'ground-checkpoint',
  dateIso: '2026-10-20',
  timeUtc: '09:30',
  place: 'Run-up area',
  station: 'QEV',
  aircraft: 'Blue one',
  receiver: 'No. 1',
  otherReceiver: null,
  expectedDeg: 90,
  indicatedDeg: 92,
  who: 'A. Pilot',
  rules: { state: 'us' },
};
const noticeOn = (todayIso: string, part: Partial<ReceiverCheck> = {}) =>
  receiversDue([{ ...CHECK, ...part }], todayIso).map(dueNotice);

describe('before a flight (14 CFR 91.171: within the preceding 30 days)', () => {
  it.each([
    ['2026-11-15', null],
    ['2026-11-16', 'VOR receiver Blue one No. 1: check due by 19 Nov 2026, 3 days left.'],
    ['2026-11-19', 'VOR receiver Blue one No. 1: check due by 19 Nov 2026, that is today.'],
    [
      '2026-11-20',
      'VOR receiver Blue one No. 1: check overdue, the last day was 19 Nov 2026. Check it before IFR.',
    ],
  ])('a check of 20 October is told of on %s as %s', (today, words) => {
    expect(noticeOn(today)).toEqual([words]);
  });

  it('a failed check is told of from the first day on', () => {
    expect(noticeOn('2026-10-20', { indicatedDeg: 95, aircraft: '' })).toEqual([
      'VOR receiver No. 1 failed its check on 20 Oct 2026: not for IFR.',
    ]);
  });

  it('rules without a figure for how long make no date up', () => {
    expect(noticeOn('2027-10-20', { rules: { state: 'canada' } })).toEqual([null]);
  });
});
