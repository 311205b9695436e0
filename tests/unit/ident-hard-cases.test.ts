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

describe('an ident in bad air is read', () => {
  test.each<[string, string, Partial<ClipPlan>]>([
    ['at 5 words a minute', 'awgn5', { wpm: 5 }],
    ['at 15 words a minute', 'awgn5', { wpm: 15 }],
    ['in an echoing cabin', 'reverb', {}],
    ['through a clipping radio', 'clip', {}],
    ['through a pumping gain control', 'agc', {}],
    ['through a narrow band', 'band', {}],
    ['fading', 'fade', {}],
    ['keyed by a worn cam', 'cam', {}],
    ['off tune', 'off-tune', {}],
    ['on the tone of a DME', 'dme-only', {}],
    ['of a VOR and its DME in turn', 'dme', { repeats: 4 }],
    ['at 8000 samples a second', 'awgn0', { sampleRateHz: 8000 }],
    ['at 16000 samples a second', 'awgn0', { sampleRateHz: 16_000 }],
    ['at 44100 samples a second', 'awgn0', { sampleRateHz: 44_100 }],
    ['at 48000 samples a second', 'awgn0', { sampleRateHz: 48_000 }],
    ['under the words of a broadcast', 'voice-6', {}],
    ['in the noise of a cabin', 'cabin0', {}],
  ])('%s', (_, condition, plan) => {
    for (const clip of clips({ condition, ...plan }, 1)) {
      expect(decodeIdent(clip).letters).toBe(clip.ident);
    }
  });

  // AIM 1-1-7 f: a single ident about every 30 seconds, on 1350 Hz, means that the DME works and the VOR does not.
  test('the ident of a DME alone does not identify the VOR', () => {
    for (const clip of clips({ condition: 'dme-only', repeats: 2 }, 1)) {
      const { verdict, why } = confirmIdent(clip, clip.ident ?? '');
      expect({ verdict, why }).toEqual({ verdict: 'cannot-tell', why: 'dme-only' });
    }
  });

  test.each(['EIE', 'SIT', 'IH', 'QJYQ'])('%s in noise', (ident) => {
    for (const clip of clips({ condition: 'awgn0', ident }, 1)) {
      expect(decodeIdent(clip).letters).toBe(ident);
    }
  });

  test.each(['EEE', 'TTT', 'M'])(
    '%s, which a few beeps could be: told later or not at all',
    (ident) => {
      for (const repeats of [1, 3]) {
        for (const clip of clips({ condition: 'awgn0', ident, repeats }, 1)) {
          expect([null, ident]).toContain(decodeIdent(clip).letters);
          expect(likeliest(decodeIdent(clip))).toBe(ident);
        }
      }
    },
  );
});

describe('an ident that is cut off is not told as a shorter one', () => {
  test.each(['cut-start', 'cut-end'])('%s', (condition) => {
    for (const clip of clips({ condition }, 4)) {
      const heard = decodeIdent(clip);
      expect([null, clip.ident]).toContain(heard.letters);
      const part = likeliest(heard);
      if (part === '' || part === clip.ident) continue;
      expect(confirmIdent(clip, part).verdict).not.toBe('confirmed');
    }
  });

  test.each(['cut-start', 'cut-end'])(
    '%s, and one more that is whole: that one is read',
    (condition) => {
      for (const clip of clips({ condition, repeats: 2 })) {
        expect(decodeIdent(clip).letters).toBe(clip.ident);
      }
    },
  );
});

describe('letters more or less are another ident', () => {
  test.each([
    ['QEVD', 'QEV'],
    ['QEVD', 'EVD'],
    ['QEV', 'QEVD'],
    ['QEV', 'QE'],
    ['QEV', 'EV'],
    ['QEV', 'QEI'],
    ['QEV', 'QTV'],
  ])('%s keyed, %s expected: never confirmed', (ident, expected) => {
    for (const clip of clips({ condition: 'awgn0', ident, repeats: 2 }, 1)) {
      expect(confirmIdent(clip, ident).verdict).toBe('confirmed');
      expect(confirmIdent(clip, expected).verdict).not.toBe('confirmed');
    }
  });
});

describe('a station that is not to be used is not confirmed', () => {
  test('of two stations at once no third is told', () => {
    for (const clip of clips({ condition: 'overlap', repeats: 2 }, 3)) {
      expect([null, clip.ident, clip.other]).toContain(decodeIdent(clip).letters);
    }
  });

  test('after retuning no mixture of both idents is told', () => {
    for (const clip of clips({ condition: 'retuned' }, 3)) {
      expect([null, clip.ident, clip.other]).toContain(decodeIdent(clip).letters);
    }
  });
});
