import { describe, expect, it } from 'vitest';
import { foresee } from '../../src/track/foresee.ts';
import { INBOUND, OUTBOUND, QEV, dated } from './ocean-legs.ts';
import { after } from './panel-rows.ts';
import type { Row } from './panel-rows.ts';

const IN = dated(INBOUND);
const OUT = dated(OUTBOUND);

describe('the end of a leg', () => {
  const outward: readonly Row[] = [13, 14.6, 16.2].map((dmeNm) => [140, 0, 'from', dmeNm]);

  it('still ahead is not past', () => {
    const { howFar } = after(OUT, outward.slice(0, 1));
    expect(howFar.pastEndNm).toBeNull();
    expect(howFar.toGoNm).toBeCloseTo(1, 1);
  });

  it('passed leaves nothing to go and tells how far it lies behind', () => {
    const { howFar } = after(OUT, outward);
    expect(howFar.toGoNm).toBe(0);
    // DME 16.2 where the leg ends at DME 14.
    expect(howFar.pastEndNm).toBeCloseTo(2.2, 1);
  });

  it('goes on to recede while no reading comes', () => {
    const { known } = after(OUT, outward);
    expect(foresee(known, OUT, 240_000).howFar.pastEndNm).toBeGreaterThan(4);
  });

  it('passed on a leg to a place before its station is told the same way', () => {
    const leg = dated({ ...INBOUND, endDmeNm: 8 });
    const rows: readonly Row[] = [9.6, 8, 6.4].map((dmeNm) => [112, 0, 'to', dmeNm]);
    expect(after(leg, rows).howFar.pastEndNm).toBeCloseTo(1.6, 1);
  });

  it('over the station lies as far behind as the DME shows', () => {
    const { howFar } = after(IN, [
      [112, 0, 'to', 2.6],
      [112, 0, 'from', 1.1],
      [112, 0, 'from', 2.7],
    ]);
    expect(howFar.toGoNm).toBe(0);
    expect(howFar.pastEndNm).toBeCloseTo(Math.sqrt(2.7 ** 2 - 0.67 ** 2), 1);
  });

  it('comes no later than the next reading that is asked for', () => {
    const rows: readonly Row[] = [9.8, 11.4, 13].map((dmeNm) => [140, 0, 'from', dmeNm]);
    const { howFar, nextReadingInS } = after(OUT, rows);
    expect(howFar.toGoS).toBeGreaterThan(30);
    expect(nextReadingInS).toBeLessThanOrEqual(Math.round(howFar.toGoS ?? 0));
  });

  it('does not come near while the distance is unknown', () => {
    const { phase } = after(OUT, [
      [140, 0, 'from'],
      [140, 0, 'from'],
    ]);
    expect(phase).toBe('outbound');
    const blind = dated({ ...INBOUND, station: { ...QEV, hasDme: false } });
    expect(after(blind, [[112, 0, 'to']]).phase).toBe('track');
  });
});
