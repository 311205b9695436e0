import { describe, expect, it } from 'vitest';
import { startEstimate } from '../../src/track/estimate.ts';
import type { Alert, AlertKind, ReverseCause } from '../../src/track/guidance.ts';
import { withOneCheck } from '../../src/track/one-check.ts';
import { AIRCRAFT, INBOUND, dated } from './ocean-legs.ts';
import { FIRST } from './tracked-flight.ts';

const START = startEstimate(dated(INBOUND), AIRCRAFT);
const IDENT = 'Check the frequency and listen to the ident.';

function left(
  kinds: readonly AlertKind[],
  reversed: ReverseCause | null = null,
  dmes: readonly number[] = [11.2, 9.6],
  isLost = false,
): readonly Alert[] {
  const readings = dmes.map((dmeNm, index) => ({ ...FIRST, atMs: index * 60_000, dmeNm }));
  const alerts = kinds.map((kind) => ({ kind, ask: kind }));
  return withOneCheck(alerts, { ...START, readings, isLost }, reversed, IDENT);
}

const kindsOf = (alerts: readonly Alert[]): readonly AlertKind[] => alerts.map(({ kind }) => kind);

describe('one fault that raises several alerts', () => {
  it('another station asks for the ident, and for nothing beside it', () => {
    expect(
      left(['reverse-sensing', 'wrong-station', 'readings-disagree'], 'flag-against-place'),
    ).toEqual([{ kind: 'wrong-station', ask: IDENT }]);
    expect(kindsOf(left(['dme-disagrees', 'wrong-station', 'dme-not-moving']))).toEqual([
      'wrong-station',
    ]);
  });

  it('flag and distance that both do not fit ask for the ident too', () => {
    expect(kindsOf(left(['reverse-sensing', 'dme-disagrees'], 'needle-backwards'))).toEqual([
      'wrong-station',
    ]);
  });

  it('an OBS on the reciprocal is no guess, and is still told', () => {
    expect(kindsOf(left(['reverse-sensing', 'wrong-station'], 'obs-reciprocal'))).toEqual([
      'wrong-station',
      'reverse-sensing',
    ]);
  });

  it('a DME that shows the same again is stuck; one that moves is another one', () => {
    const both = ['dme-disagrees', 'dme-not-moving'] as const;
    expect(kindsOf(left(both, null, [9.6, 9.6]))).toEqual(['dme-not-moving']);
    expect(kindsOf(left(both, null, [41, 42.3]))).toEqual(['dme-disagrees']);
  });

  it('leaves what is another matter', () => {
    expect(kindsOf(left(['wrong-station', 'outside-reception']))).toEqual([
      'wrong-station',
      'outside-reception',
    ]);
    expect(kindsOf(left(['readings-disagree', 'heading-indicator-disagrees']))).toHaveLength(2);
  });

  it('a lost picture is still said to be one', () => {
    expect(kindsOf(left(['wrong-station', 'readings-disagree'], null, [9, 8], true))).toContain(
      'readings-disagree',
    );
  });
});
