import { describe, expect, test } from 'vitest';
import { phonetic } from '../../src/speech/phonetic.ts';

describe('AIM table 4-2-2, phonetic alphabet', () => {
  test('each letter has its word', () => {
    expect(phonetic('ABCDEFGHIJKLM')).toBe(
      'Alfa Bravo Charlie Delta Echo Foxtrot Golf Hotel India Juliett Kilo Lima Mike',
    );
    expect(phonetic('NOPQRSTUVWXYZ')).toBe(
      'November Oscar Papa Quebec Romeo Sierra Tango Uniform Victor Whiskey Xray Yankee Zulu',
    );
  });

  test('small letters are spelled like capitals', () => {
    expect(phonetic('qev')).toBe('Quebec Echo Victor');
  });

  test('figures in an ident are spoken as figures', () => {
    expect(phonetic('A09')).toBe('Alfa zero niner');
  });

  test('what is neither letter nor figure is left out', () => {
    expect(phonetic('Q-ÉV')).toBe('Quebec Victor');
    expect(phonetic('')).toBe('');
  });
});
