import { describe, expect, test } from 'vitest';
import { isIdent, pattern } from '../../src/ident/morse.ts';
import { dotS, identTimeline, timelineLengthS } from '../../src/ident/timeline.ts';

describe('ITU-R M.1677-1 (10/2009), annex 1: the symbols', () => {
  test('letters are keyed by the table', () => {
    expect(pattern('ABCDEFGHIJKLM')).toBe('.- -... -.-. -.. . ..-. --. .... .. .--- -.- .-.. --');
    expect(pattern('NOPQRSTUVWXYZ')).toBe('-. --- .--. --.- .-. ... - ..- ...- .-- -..- -.-- --..');
  });

  test('figures are keyed by the table', () => {
    expect(pattern('1234567890')).toBe(
      '.---- ..--- ...-- ....- ..... -.... --... ---.. ----. -----',
    );
  });
});

describe('AIM 1-1-3 c: a station under maintenance keys TEST', () => {
  test('TEST is a dash, a dot, three dots, a dash', () => {
    expect(pattern('TEST')).toBe('- . ... -');
  });
});

describe('ITU-R M.1677-1: lengths of the signals and the gaps', () => {
  test.each([5, 7, 10, 15])('a dot at %i words a minute is 1.2 s over the speed (PARIS)', (wpm) => {
    expect(dotS(wpm)).toBeCloseTo(1.2 / wpm, 12);
  });

  // Units from the rule: dot 1, dash 3, gap in a letter 1, between letters 3.
  test.each([
    ['TEST', 21],
    ['DVR', 29],
    ['OKT', 29],
    ['E', 1],
    ['T', 3],
  ])('%s is %i dots long', (ident, units) => {
    expect(timelineLengthS(identTimeline(ident, { wpm: 7 })) / dotS(7)).toBeCloseTo(units, 9);
  });

  test('TEST takes 3.6 s and DVR 5.0 s at the 7 words a minute of a VOR', () => {
    expect(timelineLengthS(identTimeline('TEST'))).toBeCloseTo(3.6, 1);
    expect(timelineLengthS(identTimeline('DVR'))).toBeCloseTo(5, 1);
  });
});

describe('what can be keyed as an ident', () => {
  test('one to four letters or figures', () => {
    expect(['Q', 'QEV', 'qe', 'I9Z0'].every(isIdent)).toBe(true);
    expect(['', 'QEVAX', 'Q V', 'QÉV', 'Q-V'].some(isIdent)).toBe(false);
  });

  test('small letters are keyed like capitals, and what has no symbol is left out', () => {
    expect(pattern('qev')).toBe('--.- . ...-');
    expect(pattern('ı-Éß Q')).toBe('--.-');
    expect(identTimeline('??')).toEqual([]);
  });
});
