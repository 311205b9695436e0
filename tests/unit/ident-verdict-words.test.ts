import { describe, expect, test } from 'vitest';
import { heardWords, verdictWords } from '../../client/listen/verdict-words.ts';
import type { Confirmation, IdentHeard, Why } from '../../src/ident/heard.ts';

const heard = (part: Partial<IdentHeard> = {}): IdentHeard => ({
  letters: null,
  confidence: 0,
  toneHz: 1020,
  wpm: 7,
  repeats: 1,
  snrDb: 10,
  perLetter: [],
  why: null,
  ...part,
});

const confirmation = (part: Partial<Confirmation>): Confirmation => ({
  verdict: 'cannot-tell',
  heard: null,
  confidence: 0.5,
  why: null,
  detail: heard(),
  ...part,
});

const WHYS: readonly Why[] = [
  'silent',
  'too-short',
  'too-weak',
  'no-complete-ident',
  'two-at-once',
  'voice-over-it',
  'test-code',
  'ident-missing',
  'dme-only',
  'not-sure-yet',
  'uneven-keying',
  'steady-tone',
  'off-tone',
  'even-pulses',
  'has-figures',
  'too-few-elements',
];

describe('what the verdict about an expected ident says', () => {
  test('confirmed: the ident, its letters, how often, and that the pilot decides', () => {
    const words = verdictWords(
      confirmation({ verdict: 'confirmed', heard: 'QEV', detail: heard({ repeats: 3 }) }),
      'QEV',
      40,
    );
    expect(words.kind).toBe('confirmed');
    expect(words.headline).toBe('It sends QEV.');
    expect(words.advice).toContain('Quebec Echo Victor, heard 3 times');
    expect(words.advice).toContain('You decide');
  });

  test('different: both idents, not to be used, and it is asked whose the other is', () => {
    const words = verdictWords(confirmation({ verdict: 'different', heard: 'QXF' }), 'QEV', 20);
    expect(words.kind).toBe('different');
    expect(words.headline).toBe('Not QEV: it sends QXF.');
    expect(words.advice).toContain('Do not use this station');
    expect(words.askWhose).toBe('QXF');
  });

  test('TEST is never called another station', () => {
    const words = verdictWords(confirmation({ verdict: 'different', heard: 'TEST' }), 'QEV', 20);
    expect(words.kind).toBe('do-not-use');
    expect(words.headline).toContain('TEST');
    expect(words.askWhose).toBeNull();
  });

  test.each(WHYS)('%s: says so, and what to do', (why) => {
    const { kind, headline, advice } = verdictWords(confirmation({ why }), 'QEV', 60);
    expect(headline.length).toBeGreaterThan(5);
    expect(advice.length).toBeGreaterThan(10);
    expect(kind).toBe(
      ['test-code', 'ident-missing', 'even-pulses'].includes(why) ? 'do-not-use' : 'cannot-tell',
    );
  });

  // ICAO Annex 10 volume I, 3.3.6.5 (from memory): an ident comes at least once every 30 seconds.
  test('before half a minute no ident is called missing', () => {
    const early = verdictWords(confirmation({ why: 'ident-missing' }), 'QEV', 29);
    expect(early.kind).toBe('cannot-tell');
    expect(early.headline).toBe('No complete ident yet.');
  });
});

describe('what is said where no ident was expected', () => {
  test('the letters, without a verdict', () => {
    const words = heardWords(heard({ letters: 'QEV', repeats: 2 }), 30);
    expect(words.kind).toBe('cannot-tell');
    expect(words.headline).toBe('It sends QEV.');
    expect(words.advice).toContain('heard twice');
  });

  test('TEST as what it means', () => {
    expect(heardWords(heard({ letters: 'TEST', why: 'test-code' }), 30).kind).toBe('do-not-use');
  });
});
