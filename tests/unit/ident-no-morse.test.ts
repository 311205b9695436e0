import { describe, expect, test } from 'vitest';
import { confirmIdent, decodeIdent } from '../../src/ident/decode.ts';
import type { Recording } from '../../src/ident/recording.ts';
import type { Keying } from './ident-marks.ts';
import { marksOf, soundOf, twice } from './ident-marks.ts';

const SNR_DB = 15;
const LENGTH_S = 17;

/** The verdict on what fits best, the worst that could be expected. */
function verdictOnBest(recording: Recording): string {
  const { letters, perLetter } = decodeIdent(recording);
  const best = letters ?? perLetter.map(({ letter }) => letter).join('');
  return best === '' ? 'cannot-tell' : confirmIdent(recording, best).verdict;
}

// ITU-R M.1677-1, annex 1, 2: a dash is three dots long, elements are one dot apart, letters three.
describe('marks that are neither dots nor dashes (ITU-R M.1677-1) are never confirmed as the nearest letter', () => {
  test('the same ident without a fault is confirmed', () => {
    expect(confirmIdent(soundOf(twice('KLA'), LENGTH_S, SNR_DB), 'KLA').verdict).toBe('confirmed');
  });

  test.each<[string, Keying]>([
    ['a hole of 0.3 dots in a dash', { holes: { 2: 0.3 } }],
    ['a hole of 0.6 dots in a dash', { holes: { 4: 0.6 } }],
    ['a hole of 0.4 dots in a dot', { holes: { 1: 0.4 } }],
    ['a dot of 1.7 dots', { lengths: { 6: 1.7 } }],
    ['an element of 1.9 dots', { lengths: { 2: 1.9 } }],
    ['a dash of 2.1 dots', { lengths: { 4: 2.1 } }],
    ['a dash of 4.5 dots', { lengths: { 8: 4.5 } }],
    ['a gap of two dots inside a letter', { gaps: { 2: 2 } }],
  ])('%s, alike in both repeats', (_, keying) => {
    expect(verdictOnBest(soundOf(twice('KLA', keying), LENGTH_S, SNR_DB))).toBe('cannot-tell');
  });

  test('one repeat without a fault is enough', () => {
    const marks = [
      ...marksOf('KLA', { startS: 1.5, holes: { 2: 0.5 } }),
      ...marksOf('KLA', { startS: 10.5 }),
    ];
    expect(confirmIdent(soundOf(marks, LENGTH_S, SNR_DB), 'KLA').verdict).toBe('confirmed');
  });
});

describe('a second station on nearly the same tone', () => {
  test.each([2, 5, 8, 12])('%i Hz away: neither is confirmed', (apartHz) => {
    const other = twice('QEV', { toneHz: 1020 + apartHz, level: 0.75 });
    const late = other.map((mark) => ({ ...mark, startS: mark.startS + 1.3 }));
    const recording = soundOf([...twice('KLA'), ...late], LENGTH_S + 2, 5);
    expect(confirmIdent(recording, 'KLA').verdict).toBe('cannot-tell');
    expect(confirmIdent(recording, 'QEV').verdict).toBe('cannot-tell');
  });
});
