import { describe, expect, test } from 'vitest';
import { besideEachOther, differenceWords } from '../../src/ident/drill/difference.ts';
import type { Answer } from '../../src/ident/drill/event.ts';
import { judge } from '../../src/ident/drill/judge.ts';
import { nearIdents, nearLetters } from '../../src/ident/drill/near-idents.ts';
import { copy, onPlate, written } from './practice-log.ts';

const YES: Answer = { kind: 'yes' };
const NO: Answer = { kind: 'no' };
const NOT_IDENTIFIED: Answer = { kind: 'not-identified' };

describe('an ident written down', () => {
  test('is right in small letters too', () => {
    expect(judge(copy('QEV'), written('qev')).isRight).toBe(true);
  });

  test('names the letter that was taken for another', () => {
    const { isRight, letters } = judge(copy('QEV'), written('QEU'));
    expect(isRight).toBe(false);
    expect(letters.filter(({ sent, answered }) => sent !== answered)).toEqual([
      { sent: 'V', answered: 'U' },
    ]);
  });

  test('with a letter left out still gives the others their due', () => {
    expect(judge(copy('QEV'), written('QV')).letters).toEqual([
      { sent: 'Q', answered: 'Q' },
      { sent: 'E', answered: null },
      { sent: 'V', answered: 'V' },
    ]);
  });

  test('that was called not identified is wrong, but says nothing of its letters', () => {
    expect(judge(copy('QEV'), NOT_IDENTIFIED)).toEqual({ isRight: false, letters: [] });
  });
});

describe('the ident on the plate', () => {
  test('is told from one that differs in one element', () => {
    const other = onPlate('QEV', { kind: 'ident', ident: 'QEU' });
    expect(judge(other, NO)).toEqual({
      isRight: true,
      letters: [{ sent: 'U', answered: 'U' }],
    });
    expect(judge(other, YES)).toEqual({
      isRight: false,
      letters: [{ sent: 'U', answered: 'V' }],
    });
  });

  test('is confirmed by yes alone', () => {
    const same = onPlate('QEV', { kind: 'ident', ident: 'QEV' });
    expect(judge(same, YES).isRight).toBe(true);
    expect(judge(same, NO)).toEqual({ isRight: false, letters: [] });
    expect(judge(same, NOT_IDENTIFIED).isRight).toBe(false);
  });
});

describe('a station that cannot be identified (AIM 1-1-3 c: TEST or no code; 1-1-7 f: DME alone)', () => {
  const sent = [{ kind: 'test' }, { kind: 'nothing' }, { kind: 'dme-only', ident: 'QEV' }] as const;

  test.each(sent)('$kind: not identified is right, yes never is', (each) => {
    expect(judge(onPlate('QEV', each), NOT_IDENTIFIED).isRight).toBe(true);
    expect(judge(onPlate('QEV', each), NO).isRight).toBe(true);
    expect(judge(onPlate('QEV', each), YES).isRight).toBe(false);
    expect(judge(copy('QEV', { sent: each }), NOT_IDENTIFIED).isRight).toBe(true);
  });

  test('the ident of a DME alone written down is wrong: the VOR is not identified', () => {
    const dmeOnly = copy('QEV', { sent: { kind: 'dme-only', ident: 'QEV' } });
    expect(judge(dmeOnly, written('QEV')).isRight).toBe(false);
  });

  test('TEST written down is right', () => {
    expect(judge(copy('QEV', { sent: { kind: 'test' } }), written('test')).isRight).toBe(true);
  });
});

describe('what differs', () => {
  const words = (sent: string, answered: string): readonly string[] =>
    besideEachOther(sent, answered)
      .map(differenceWords)
      .filter((each) => each !== '');

  test.each([
    ['K', 'D', 'The third element is a dash in K, a dot in D.'],
    ['V', 'U', 'V has one dot more than U.'],
    ['U', 'V', 'U has one dot less than V.'],
    ['QEV', 'QV', 'E is missing.'],
    ['QV', 'QEV', 'E was not sent.'],
    ['O', 'S', 'O and S differ in 3 places.'],
  ])('%s against %s: %s', (sent, answered, expected) => {
    expect(words(sent, answered)).toEqual([expected]);
  });

  test('is nothing between an ident and itself', () => {
    expect(words('QEV', 'QEV')).toEqual([]);
  });
});

describe('letters one element apart', () => {
  test('of A are those with an element changed, left out or put in', () => {
    // A is dot dash: I ..  M --  E .  T -  then R .-.  W .--  U ..-  K -.-
    expect(nearLetters('A')).toEqual(['E', 'I', 'K', 'M', 'R', 'T', 'U', 'W']);
  });

  test('give idents of the same length that differ in one letter', () => {
    for (const { ident, letterIndex, letter } of nearIdents('QEV')) {
      expect(ident).toHaveLength(3);
      expect(ident.charAt(letterIndex)).toBe(letter);
      expect(Array.from(ident).filter((each, at) => each !== 'QEV'.charAt(at))).toHaveLength(1);
    }
  });
});
