import { describe, expect, test } from 'vitest';
import { confirmIdent, decodeIdent } from '../../src/ident/decode.ts';
import { makeClip } from '../bench/ident-air.ts';
import { marksOf, soundOf, twice } from './ident-marks.ts';

const held = (toneHz: number) => [{ startS: -1, durationS: 30, isDash: true, toneHz, level: 1 }];

describe('where nothing is read, the reason is the true one', () => {
  test.each([1020, 1250, 1350])('a tone of %i Hz that never stops', (toneHz) => {
    expect(decodeIdent(soundOf(held(toneHz), 12, 20)).why).toBe('steady-tone');
  });

  // AIM 1-1-4 b: a VOT is identified by a series of dots or by a continuous tone.
  test.each([
    [5, 2],
    [7, 4],
    [12, 8],
  ])('dots at one pace, %i words a minute, one in %i dots', (wpm, everyDots) => {
    const dotS = 1.2 / wpm;
    const dots = Array.from({ length: 60 }, (_, n) => ({
      ...{ startS: n * everyDots * dotS - 0.3, durationS: dotS, isDash: false },
      ...{ toneHz: 1020, level: 1 },
    }));
    for (const snr3kDb of [null, 10]) {
      const sound = soundOf(dots, 12, snr3kDb);
      expect(decodeIdent(sound)).toMatchObject({ letters: null, why: 'even-pulses' });
      for (const expected of ['E', 'EE', 'EEE', 'EEEE', 'H', 'SSS']) {
        expect(confirmIdent(sound, expected).verdict).toBe('cannot-tell');
      }
    }
  });

  test.each(['A', 'E', 'I', 'M', 'N', 'T'])('%s alone: too few elements', (ident) => {
    const marks = [1.5, 9, 16.5, 24].flatMap((startS) => marksOf(ident, { startS }));
    const { verdict, why } = confirmIdent(soundOf(marks, 26, null), ident);
    expect({ verdict, why }).toEqual({ verdict: 'cannot-tell', why: 'too-few-elements' });
  });

  test.each(['EE', 'ET', 'TE'])('%s: confirmed when heard four times, not before', (ident) => {
    const starts = [1.5, 9, 16.5, 24];
    const heard = (times: number) => {
      const marks = starts.slice(0, times).flatMap((startS) => marksOf(ident, { startS }));
      return confirmIdent(soundOf(marks, 27, null), ident);
    };
    expect(heard(3)).toMatchObject({ verdict: 'cannot-tell', why: 'too-few-elements' });
    expect(heard(4)).toMatchObject({ verdict: 'confirmed', heard: ident });
  });

  test.each([3, 4, 5])('an ident cut off after %i s', (lengthS) => {
    const { verdict, why } = confirmIdent(
      soundOf(marksOf('QEV', { startS: 1 }), lengthS, null),
      'QEV',
    );
    expect({ verdict, why }).toEqual({ verdict: 'cannot-tell', why: 'no-complete-ident' });
  });

  test('figures, which are not read', () => {
    const { verdict, why } = confirmIdent(soundOf(twice('QEV'), 17, 5), 'Q1');
    expect({ verdict, why }).toEqual({ verdict: 'cannot-tell', why: 'has-figures' });
  });

  // ICAO Annex 10 volume I, 3.3.6.5 (from memory): an ident comes at least once every 30 seconds.
  test('hiss for half a minute: the ident is missing', () => {
    const hiss = (lengthS: number) => decodeIdent(soundOf([], lengthS, 0)).why;
    expect(hiss(20)).toBe('no-complete-ident');
    expect(hiss(31)).toBe('ident-missing');
  });

  // ICAO Annex 10 volume I, 3.3.6.5: 1020 Hz +- 50 Hz; the DME's 1350 Hz: AIM 1-1-7 f.
  test.each([850, 1120, 1250])('an ident keyed on %i Hz', (toneHz) => {
    const heard = decodeIdent(soundOf(twice('QEV', { toneHz }), 17, 5));
    expect(heard).toMatchObject({ letters: null, perLetter: [], why: 'off-tone' });
  });

  test('speech alone', () => {
    const { why } = decodeIdent(makeClip({ seed: 60, condition: 'none_speech' }));
    expect(why).toBe('voice-over-it');
  });

  test('a microphone that is off zero, and hears nothing', () => {
    expect(decodeIdent(soundOf([], 8, null, (samples) => samples.fill(4))).why).toBe('silent');
  });

  test('white noise: and neither tone nor speed nor repeats are made up', () => {
    for (const seed of [60, 61, 62, 63]) {
      const heard = decodeIdent(makeClip({ seed, condition: 'none_noise' }));
      const nothing = { toneHz: null, wpm: null, repeats: 0, snrDb: null, perLetter: [] };
      expect(heard).toMatchObject({ ...nothing, letters: null, why: 'no-complete-ident' });
    }
  });
});

describe('the confidence belongs to what is claimed', () => {
  const qev = soundOf(twice('QEV'), 17, 5);

  test('confirmed and different: that of the ident heard, to three decimals, never 1', () => {
    const confirmed = confirmIdent(qev, 'QEV');
    expect(confirmed).toMatchObject({ verdict: 'confirmed', heard: 'QEV', confidence: 0.999 });
    const different = confirmIdent(qev, 'KLA');
    expect(different).toMatchObject({ verdict: 'different', heard: 'QEV', confidence: 0.999 });
  });

  test('cannot tell: none, though the letters may be clear', () => {
    const test_ = soundOf(twice('TEST'), 17, 5);
    expect(confirmIdent(test_, 'TEST')).toMatchObject({ verdict: 'cannot-tell', confidence: 0 });
    const cut = soundOf(twice('QEV').slice(0, 7), 5, 5);
    expect(decodeIdent(cut)).toMatchObject({ letters: null, confidence: 0 });
  });
});

describe('keying at the ends of what is read', () => {
  test.each([4, 5, 15])('%i words a minute', (wpm) => {
    expect(decodeIdent(soundOf(marksOf('QEV', { wpm }), 17, 5)).letters).toBe('QEV');
  });
});
