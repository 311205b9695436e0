import { describe, expect, test } from 'vitest';
import { agreementOf, lettersLike, readPatterns } from '../../src/ident/look-up.ts';

describe('dots and dashes as they are typed', () => {
  test.each([
    ['--.- . ...-', ['--.-', '.', '...-']],
    ['  –·–  / ·', ['-.-', '.']],
    ['-?- .', ['-?-', '.']],
    ['QEV', []],
    ['', []],
  ])('"%s" is %j', (text, expected) => {
    expect(readPatterns(text)).toEqual(expected);
  });

  test('may be the letters that begin so while more may come, and only the letter itself after', () => {
    expect(lettersLike('--.', true)).toEqual(['G', 'Q', 'Z']);
    expect(lettersLike('--.', false)).toEqual(['G']);
  });

  test('with an element not made out may be either', () => {
    expect(lettersLike('-?-', false)).toEqual(['K', 'O']);
  });

  test('that no letter has may be none', () => {
    expect(lettersLike('......', true)).toEqual([]);
  });
});

describe('an ident', () => {
  test.each([
    ['--.- . ...-', 'whole'],
    ['--.- . ...', 'begins'],
    ['--.-', 'begins'],
    ['--.-. ...-', 'gaps-elsewhere'],
    ['--.-....-', 'gaps-elsewhere'],
    ['--.? ? ...-', 'whole'],
    ['--.- . ..-', null],
    ['--.- . ...- .', null],
    ['', null],
  ])('typed "%s" agrees with QEV: %s', (text, expected) => {
    expect(agreementOf(readPatterns(text), 'QEV')).toBe(expected);
  });
});
