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

  it('with a distance that grows from reading to reading says that the station is behind', () => {
    const rows = [
      [112, 0, 'from', 11.2],
      [112, 0, 'from', 12.8],
      [112, 0.5, 'from', 14.4],
    ] as const;
    const { howFar, kinds, asks, reverseSensing } = after(IN, rows);
    expect(kinds).toEqual(['reverse-sensing']);
    expect(reverseSensing).toBe('station-behind');
    expect(asks).toMatch(/the distance grows: the station is behind you/);
    expect(howFar.toGoNm).toBe(0);
    expect(howFar.pastEndNm).toBeCloseTo(14.4, 0);
    // Not while it shrinks, nor on a single growth, which may be a slip.
    const shrinking = [14.4, 12.8, 11.2].map((dmeNm) => [112, 0, 'from', dmeNm] as const);
    expect(after(IN, shrinking).reverseSensing).toBe('from-before-station');
    expect(after(IN, rows.slice(0, 2)).reverseSensing).toBe('from-before-station');
  });

  it('with the needle on its stop is not yet a fault: the bearing is asked for first', () => {
    const { kinds, nextQuestion, howFar } = after(IN, [[112, 5, 'from', 11.2]]);
    expect(kinds).toEqual([]);
    expect(nextQuestion).toBe('centre-needle-from');
    expect(howFar.toGoNm).toBeNull();
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

  it('with the needle on its stop is a healthy start: first the bearing is asked for', () => {
    const first = after(OUT, [[140, -5, 'to', 7]]);
    expect(first.kinds).toEqual([]);
    expect(first.nextQuestion).toBe('centre-needle-from');
    const next = after(OUT, [
      [140, -5, 'to', 7],
      [140, -5, 'to', 6],
    ]);
    expect(next.kinds).toEqual([]);
    expect(next.nextQuestion).toBe('centre-needle-from');
  });

  it('is known once the needle was centred with FROM, and no fault from then on', () => {
    const { kinds, howFar } = after(OUT, [
      [140, -5, 'to', 7],
      [140, 0, 'from', 6, 280],
      [140, -5, 'to', 5],
    ]);
    expect(kinds).toEqual([]);
    expect(howFar.toGoNm).toBeGreaterThan(15);
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

describe('a needle centred by turning the OBS, as asked', () => {
  const ASKED = [112, -5, 'to', 15.2] as const;
  const isReversed = (dots: number, obsDeg: number): boolean =>
    after(IN, [ASKED, [50, dots, 'from', 14.7, obsDeg]]).reverseSensing === 'obs-reciprocal';

  it('may be left a dot off, near the reciprocal of the course too', () => {
    for (const obsDeg of [276, 285, 292, 300]) {
      for (const dots of [-1.5, -1, 1, 1.5]) expect(isReversed(dots, obsDeg)).toBe(false);
    }
  });

  it('is another thing than the reciprocal set for the course, which is still told', () => {
    expect(isReversed(3, 292)).toBe(true);
    const flown = [
      [112, 0, 'to', 15.2],
      [112, 1, 'from', 13.6, 292],
    ] as const;
    expect(after(IN, flown).reverseSensing).toBe('obs-reciprocal');
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
