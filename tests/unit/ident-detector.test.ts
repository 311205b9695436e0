import { describe, expect, it } from 'vitest';
import { confirmIdent, decodeIdent } from '../../src/ident/decode.ts';
import { startFrontEnd, frontEndStep } from '../../src/ident/front-end.ts';
import { heardSoFar, listenOn, startListening } from '../../src/ident/listening.ts';
import type { Recording } from '../../src/ident/recording.ts';
import { keyedSamples } from '../../src/ident/synthesis.ts';
import { repeatedTimeline } from '../../src/ident/timeline.ts';

function keyed(ident: string, sampleRateHz = 8000): Recording {
  const samples = keyedSamples(repeatedTimeline(ident, { repeats: 1 }), { sampleRateHz });
  return { samples, sampleRateHz, isCutShort: false };
}

describe('an ident keyed by a machine in digital silence', () => {
  it('is read with its tone and speed', () => {
    const heard = decodeIdent(keyed('QEV'));
    expect(heard.letters).toBe('QEV');
    expect(heard.toneHz).toBeCloseTo(1020, 0);
    expect(heard.wpm).toBeCloseTo(7, 1);
    expect(heard.repeats).toBe(1);
  });

  it('is confirmed when expected, and never as another', () => {
    expect(confirmIdent(keyed('QEV'), 'QEV').verdict).toBe('confirmed');
    expect(confirmIdent(keyed('QEV'), 'QEW').verdict).not.toBe('confirmed');
  });

  it('is confirmed while it is being listened to', () => {
    const { samples, sampleRateHz } = keyed('QEV');
    const frontEnd = startFrontEnd(sampleRateHz);
    const listening = startListening({
      sampleRateHz: frontEnd.taps.outRateHz,
      expected: 'QEV',
    });
    const out = new Float32Array(64);
    for (let from = 0; from < samples.length; from += 128) {
      const count = frontEndStep(frontEnd, samples.subarray(from, from + 128), out);
      listenOn(listening, out.subarray(0, 2 * count));
    }
    expect(heardSoFar(listening).confirmation?.verdict).toBe('confirmed');
  });
});
