import { describe, expect, it } from 'vitest';
import { spokenAsk } from '../../src/procedure/spoken-ask.ts';
import { estimate } from '../../src/track/estimate.ts';
import type { ReverseCause } from '../../src/track/guidance.ts';
import type { Reading } from '../../src/track/reading.ts';
import { reverseAsk } from '../../src/track/reverse-sensing.ts';
import { AIRCRAFT, INBOUND, dated } from './ocean-legs.ts';

const DECIMAL = { decimalWord: 'decimal' } as const;
const FAR: Reading = { atMs: 0, courseSetDeg: 112, needleDots: 0, flag: 'from', dmeNm: 11.2 };
const KNOWN = estimate([FAR], dated(INBOUND), AIRCRAFT);

describe('the check of an alert as the voice says it', () => {
  it('speaks the DME at which FROM was read', () => {
    expect(spokenAsk(reverseAsk(KNOWN, 'from-before-station'), DECIMAL)).toBe(
      'FROM at one one decimal two, and no TO before it: check the O B S and the flag.',
    );
  });

  it.each([
    'obs-reciprocal',
    'flag-against-place',
    'from-before-station',
    'station-behind',
    'to-before-station',
    'needle-backwards',
  ] as const)('has neither figures nor abbreviations for %s', (cause: ReverseCause) => {
    expect(spokenAsk(reverseAsk(KNOWN, cause), DECIMAL)).not.toMatch(/[0-9]|\b(OBS|DME|VOR)\b/);
  });
});
