import { describe, expect, it } from 'vitest';
import { expectedPanel } from '../../client/parts/expected-panel.ts';
import { expectedAt } from '../../src/flight/expected.ts';
import { foldFlight } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import type { Leg } from '../../src/leg/leg.ts';
import { INBOUND, OUTBOUND } from './ocean-legs.ts';
import { PLAN, readingAt } from './ocean-flight.ts';

const NEAR = readingAt('B1', 60, { headingDeg: 112, needleDots: 0, flag: 'to', dmeNm: 5.2 });
const NEARER = readingAt('B2', 120, { headingDeg: 112, needleDots: 0, dmeNm: 3.6 });

function panelAt(events: readonly FlightEvent[], atS: number, leg: Leg = INBOUND) {
  const state = foldFlight(events);
  return expectedPanel(state, leg, expectedAt(state, atS * 1000));
}

describe('the flag on the panel', () => {
  it('stays as it was read when it should have changed by now, and has to be read', () => {
    const events = [PLAN, NEAR, NEARER];
    expect(expectedAt(foldFlight(events), 330_000)?.flag).not.toBe('to');
    expect(panelAt(events, 330)).toMatchObject({ flag: 'to', mustReadFlag: true });
  });

  it('need not be read anew while it should still be the same', () => {
    expect(panelAt([PLAN, NEAR, NEARER], 130)).toMatchObject({ flag: 'to', mustReadFlag: false });
  });

  it('is that of the direction until it has been read on this leg', () => {
    expect(panelAt([PLAN], 60).flag).toBe('to');
    const passed = readingAt('B3', 260, { needleDots: 0, flag: 'from' });
    expect(panelAt([PLAN, NEAR, NEARER, passed], 270, OUTBOUND).flag).toBe('from');
  });

  it('does not stay OFF', () => {
    const off = readingAt('B3', 230, { flag: 'off' });
    expect(panelAt([PLAN, NEAR, NEARER, off], 235).flag).toBe('to');
  });

  it('is not taken from a reading on another course, which is set back', () => {
    const radial = readingAt('B3', 130, { courseSetDeg: 292, needleDots: 0, flag: 'from' });
    const panel = panelAt([PLAN, NEAR, NEARER, radial], 140);
    expect(panel).toMatchObject({ flag: 'to', courseSetDeg: INBOUND.courseDeg });
  });

  it('is not taken from a reading that was taken back', () => {
    const slip = readingAt('B3', 130, { needleDots: 0, flag: 'from' });
    const undo: FlightEvent = { id: 'C1', atMs: 135_000, kind: 'taken-back', eventId: 'B3' };
    expect(panelAt([PLAN, NEAR, slip, undo], 140).flag).toBe('to');
  });
});

describe('the rest of the panel', () => {
  it('has a distance to go after the radial was read with the needle centred', () => {
    const radial = readingAt('B3', 130, { courseSetDeg: 292, needleDots: 0, flag: 'from' });
    const seen = expectedAt(foldFlight([PLAN, NEAR, NEARER, radial]), 140_000);
    expect(seen?.howFar.toGoNm).toBeGreaterThan(2);
    expect(seen?.flag).toBe('to');
  });

  it('is nothing to confirm before anything is foreseen', () => {
    const panel = panelAt([PLAN], 60);
    expect(panel).toMatchObject({ isForeseen: false, needleDots: null, dmeNm: null });
  });

  it('is foreseen in half dots and tenths', () => {
    const panel = panelAt([PLAN, NEAR], 90);
    expect(panel.isForeseen).toBe(true);
    expect((panel.needleDots ?? NaN) * 2).toBeCloseTo(Math.round((panel.needleDots ?? NaN) * 2), 9);
    // 30 s at 95 kt in up to 15 kt of wind is 0.7 to 0.9 NM.
    expect(panel.dmeNm).toBeGreaterThan(4.2);
    expect(panel.dmeNm).toBeLessThan(4.6);
  });
});
