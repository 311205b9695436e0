import { describe, expect, it } from 'vitest';
import { INBOUND, OUTBOUND, QEV, dated } from './ocean-legs.ts';
import { after } from './panel-rows.ts';

const IN = dated(INBOUND);
const OUT = dated(OUTBOUND);
const BLIND = dated({ ...INBOUND, station: { ...QEV, hasDme: false } });

describe('FROM on a leg to the station', () => {
  it('far out and without a TO before it is no passage but a question', () => {
    const { phase, howFar, kinds, asks } = after(IN, [[112, 0, 'from', 11.2]]);
    expect(phase).not.toBe('passage');
    expect(howFar.toGoNm).toBeNull();
    expect(kinds).toContain('reverse-sensing');
    expect(asks).toMatch(/FROM at 11\.2/);
  });

  it('close to the station is the passage though no TO was ever read', () => {
    expect(after(IN, [[112, 0, 'from', 1.1]]).phase).toBe('passage');
  });

  it('without any distance and without a TO before it is a question too', () => {
    const { phase, kinds } = after(BLIND, [[112, 0, 'from']]);
    expect(phase).not.toBe('passage');
    expect(kinds).toContain('reverse-sensing');
  });

  it('that was a slip is forgotten with the next TO', () => {
    const { phase, howFar, kinds } = after(IN, [
      [112, 0, 'from', 11.2],
      [112, 0, 'to', 9.6],
    ]);
    expect(phase).toBe('track');
    expect(howFar.toGoNm).toBeCloseTo(9.6, 1);
    expect(kinds).toEqual([]);
  });

  it('a passage is taken back by a later TO', () => {
    const passed = after(IN, [
      [112, 0, 'to', 2.6],
      [112, 0, 'from', 1.1],
    ]);
    expect(passed.phase).toBe('passage');
    const back = after(IN, [
      [112, 0, 'to', 2.6],
      [112, 0, 'from', 1.1],
      [112, 0, 'to', 1.4],
    ]);
    expect(back.known.hasPassed).toBe(false);
  });

  it('once among TO raises no doubt about the needle', () => {
    const { kinds } = after(IN, [
      [112, 0, 'to', 11.2],
      [112, 0, 'from', 9.6],
      [112, 0, 'to', 8],
      [112, 0, 'to', 6.4],
    ]);
    expect(kinds).toEqual([]);
  });
});

describe('TO on a leg from the station', () => {
  it('says that the station is still ahead, and counts the way to it', () => {
    const { howFar, kinds, asks } = after(OUT, [[140, 0, 'to', 5]]);
    // 5 NM to the station and 14 beyond it.
    expect(Math.abs((howFar.toGoNm ?? 0) - 18.9)).toBeLessThan(0.2);
    expect(kinds).toContain('reverse-sensing');
    expect(asks).toContain('the station is still ahead');
  });

  it('over the station is no fault', () => {
    expect(after(OUT, [[140, 0, 'to', 1.0]]).kinds).toEqual([]);
  });
});

describe('the three causes of reverse sensing', () => {
  it('have a question of their own each', () => {
    const flag = after(IN, [
      [112, 0, 'to', 11.2],
      [112, 0, 'from', 9.6],
    ]);
    const obs = after(IN, [[112, 2, 'from', 11.2, 292]]);
    expect(flag.kinds).toEqual(['reverse-sensing']);
    expect(obs.kinds).toContain('reverse-sensing');
    expect(flag.asks).not.toBe(obs.asks);
    expect(flag.reverseSensing).toBe('flag-against-place');
    expect(obs.reverseSensing).toBe('obs-reciprocal');
    expect(obs.asks).toMatch(/reciprocal/);
    expect(after(IN, [[112, 0, 'to', 11.2]]).reverseSensing).toBeUndefined();
  });
});

describe('OFF', () => {
  it('with the distance unknown may be a lost signal: not the passage, no distance', () => {
    const { phase, howFar, whichWay, kinds, asks } = after(BLIND, [
      [112, 0, 'to'],
      [112, 0, 'to'],
      [112, 0, 'to'],
      [112, null, 'off'],
    ]);
    expect(whichWay).toMatchObject({ turn: 'none', headingDeg: 112, thenHeadingDeg: 112 });
    expect(phase).not.toBe('passage');
    expect(howFar.toGoNm).toBeNull();
    expect(kinds).toEqual(['flag-off']);
    expect(asks).toMatch(/over the station, or the signal is lost/);
  });

  it('with the distance unknown leaves the place as it was', () => {
    const rows = [[112, 0, 'to'] as const, [112, 0, 'to'] as const];
    const off = after(BLIND, [...rows, [112, null, 'off']]).known.belief;
    expect(Math.exp(off.mean.lnRange)).toBeGreaterThan(5);
  });

  it('outside the cone is near the station, not yet over it', () => {
    // 50 degrees at 4,090 ft above the antenna: the cone reaches 0.80 NM; DME 1.5 is 1.34 NM over ground.
    const { phase } = after(IN, [
      [112, 0, 'to', 4.5],
      [112, 0, 'to', 3],
      [112, null, 'off', 1.5],
    ]);
    expect(phase).toBe('near-station');
  });

  it('as the first reading is not lost and does not ask for a needle that tells nothing', () => {
    const { phase, nextQuestion, kinds } = after(IN, [[112, null, 'off', 11.2]]);
    expect(phase).not.toBe('lost');
    expect(nextQuestion).toBeNull();
    expect(kinds).toEqual(['flag-off']);
  });
});

describe('a first reading with a live flag', () => {
  it.each([
    [null, undefined],
    [5, undefined],
    [null, 11.2],
  ])('is never lost: needle %s, DME %s', (needle, dmeNm) => {
    expect(after(IN, [[112, needle, 'to', dmeNm ?? null]]).phase).not.toBe('lost');
  });
});
