import { describe, expect, test } from 'vitest';
import { confirmIdent, decodeIdent } from '../../src/ident/decode.ts';
import type { IdentHeard } from '../../src/ident/heard.ts';
import { makeClip } from '../bench/ident-air.ts';
import type { Clip, ClipPlan } from '../bench/ident-air.ts';

// The clips come from a generator that shares no code with src/ident.

function clips(plan: Omit<ClipPlan, 'seed'>, count = 2): Clip[] {
  return Array.from({ length: count }, (_, index) => makeClip({ seed: 60 + index, ...plan }));
}

/** The likeliest ident, told or not. */
function likeliest(heard: IdentHeard): string {
  return heard.perLetter.map(({ letter }) => letter).join('');
}

describe('no ident is made up', () => {
  test.each([
    'none_silence',
    'none_noise',
    'none_cabin',
    'none_speech',
    'none_mix',
    'none_steady',
    'none_pulses',
    'none_beeps',
  ])('%s', (condition) => {
    for (const clip of clips({ condition })) {
      const heard = decodeIdent(clip);
      expect(heard.letters).toBeNull();
      expect(heard.why).not.toBeNull();
      for (const expected of ['QEV', likeliest(heard) || 'EEE']) {
        expect(confirmIdent(clip, expected).verdict).toBe('cannot-tell');
      }
    }
  });
});

describe('a station under test', () => {
  test('TEST is named as such, whatever is expected', () => {
    for (const clip of clips({ condition: 'test', repeats: 2 })) {
      expect(decodeIdent(clip).why).toBe('test-code');
      expect(confirmIdent(clip, 'TEST').verdict).toBe('cannot-tell');
      for (const expected of ['TES', 'EST', 'QEV']) {
        expect(confirmIdent(clip, expected).verdict).not.toBe('confirmed');
      }
    }
  });
});
