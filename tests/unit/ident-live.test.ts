import { describe, expect, test } from 'vitest';
import { decodeIdent } from '../../src/ident/decode.ts';
import { frontEndStep, startFrontEnd } from '../../src/ident/front-end.ts';
import { heardSoFar, listenOn, startListening } from '../../src/ident/listening.ts';
import type { ListeningView } from '../../src/ident/listening.ts';
import type { Recording } from '../../src/ident/recording.ts';
import { makeClip } from '../bench/ident-air.ts';
import { marksOf, soundOf } from './ident-marks.ts';

/** What is known at the end of a recording heard as it comes in, in blocks of 20 ms. */
function heardLive({ samples, sampleRateHz }: Recording, expected: string): ListeningView {
  const frontEnd = startFrontEnd(sampleRateHz);
  const listening = startListening({ sampleRateHz: frontEnd.taps.outRateHz, expected });
  const size = Math.round(0.02 * sampleRateHz);
  const out = new Float32Array(2 * size);
  for (let from = 0; from < samples.length; from += size) {
    const count = frontEndStep(frontEnd, samples.subarray(from, from + size), out);
    listenOn(listening, out.slice(0, 2 * count));
  }
  return heardSoFar(listening);
}

describe('what is heard as it comes in', () => {
  test.each(['cabin0', 'awgn0', 'hand', 'dme-only'])(
    'agrees with the recording read at once: %s',
    (condition) => {
      const clip = makeClip({ seed: 71, condition, repeats: 2 });
      const atOnce = decodeIdent(clip);
      const live = heardLive(clip, clip.ident ?? '');
      expect(live.letters).toBe(atOnce.letters);
      expect(live.heard?.why).toBe(atOnce.why);
      expect(live.toneHz).toBeCloseTo(atOnce.toneHz ?? 0, 0);
      expect(live.repeats).toBe(atOnce.repeats);
    },
  );

  test('an ident under words that do not stop is confirmed, within two of its repeats', () => {
    const clip = makeClip({ seed: 72, condition: 'voice-6', repeats: 3 });
    expect(heardLive(clip, clip.ident ?? '').confirmation?.verdict).toBe('confirmed');
  });

  test('words alone confirm nothing', () => {
    const clip = makeClip({ seed: 73, condition: 'none_speech' });
    expect(heardLive(clip, 'QEV').confirmation?.verdict).toBe('cannot-tell');
  });
});

describe('a station without its ident', () => {
  // ICAO Annex 10 volume I, 3.3.6.5 (from memory): an ident comes at least once every 30 seconds.
  test('is named so when nothing was keyed for half a minute and a look', () => {
    expect(heardLive(soundOf([], 25, 0), 'QEV').heard?.why).toBe('no-complete-ident');
    const { heard, confirmation } = heardLive(soundOf([], 42, 0), 'QEV');
    expect(heard?.why).toBe('ident-missing');
    expect(confirmation).toMatchObject({ verdict: 'cannot-tell', why: 'ident-missing' });
  });
});

describe('idents of other than three letters', () => {
  test.each([
    ['Y', 3],
    ['AB', 1],
    ['XY', 2],
    ['QEVD', 1],
    ['EEEE', 2],
  ])('%s keyed %i times is read', (ident, times) => {
    const marks = Array.from({ length: times }, (_, n) => marksOf(ident, { startS: 1.5 + 9 * n }));
    expect(decodeIdent(soundOf(marks.flat(), 9 * times, 5)).letters).toBe(ident);
  });

  test('three beeps are no ident', () => {
    for (const ident of ['EEE', 'TTT', 'EET']) {
      const marks = [1.5, 8].flatMap((startS) => marksOf(ident, { startS }));
      expect(decodeIdent(soundOf(marks, 14, 5)).letters).toBeNull();
    }
  });
});
