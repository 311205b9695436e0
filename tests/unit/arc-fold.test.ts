import { describe, expect, it } from 'vitest';
import type { FlightEvent, PlanEvent } from '../../src/flight/event.ts';
import { callsDue } from '../../src/flight/calls-due.ts';
import { expectedAt } from '../../src/flight/expected.ts';
import { foldFlight } from '../../src/flight/fold.ts';
import { checkLeg } from '../../src/leg/check-leg.ts';
import { datedLeg } from '../../src/leg/leg-frame.ts';
import type { DmeArc, Leg } from '../../src/leg/leg.ts';
import type { Result } from '../../src/base/result.ts';
import { problemsOf } from '../../src/wire/problems-of.ts';
import { LegSchema } from '../../src/wire/leg.ts';
import { PLAN, readingAt } from './ocean-flight.ts';
import { DATE_ISO, INBOUND, QEV } from './ocean-legs.ts';

const ARC: DmeArc = { dmeNm: 12, toRadialDeg: 40, turn: 'clockwise' };

const ARC_LEG: Leg = {
  station: QEV,
  direction: 'to',
  courseDeg: 145,
  altitudeFt: 4500,
  arc: ARC,
};

const IN_FROM_ARC: Leg = { ...INBOUND, courseDeg: 220 };

function fieldsRefused(result: Result<unknown>): string[] {
  return result.ok ? [] : result.problem.map(({ field }) => field);
}

describe('an arc as a leg', () => {
  const arcWith = (change: Partial<DmeArc>, leg: Partial<Leg> = {}): Leg => ({
    ...ARC_LEG,
    ...leg,
    arc: { ...ARC, ...change },
  });

  it('that can be flown is accepted, its radial of 360 as 0', () => {
    expect(checkLeg(ARC_LEG)).toEqual({ ok: true, value: ARC_LEG });
    expect(checkLeg(arcWith({ toRadialDeg: 360 }))).toMatchObject({
      value: { arc: { toRadialDeg: 0 } },
    });
  });

  it.each([
    [arcWith({ dmeNm: 250.1 }), 'leg.arc.dmeNm'],
    [arcWith({ dmeNm: NaN }), 'leg.arc.dmeNm'],
    // 4,090 ft above the antenna are 0.67 NM.
    [arcWith({ dmeNm: 0.6 }), 'leg.arc.dmeNm'],
    [arcWith({ toRadialDeg: 361 }), 'leg.arc.toRadialDeg'],
    [arcWith({ toRadialDeg: -1 }), 'leg.arc.toRadialDeg'],
    // Joined inbound on course 145, that is on the 325 radial.
    [arcWith({ toRadialDeg: 325 }), 'leg.arc.toRadialDeg'],
    [arcWith({ toRadialDeg: 145 }, { direction: 'from' }), 'leg.arc.toRadialDeg'],
    [arcWith({}, { station: { ...QEV, hasDme: false } }), 'leg.arc.dmeNm'],
    [arcWith({}, { endDmeNm: 8 }), 'leg.endDmeNm'],
  ])('%# is refused by the name of the field', (leg, field) => {
    expect(fieldsRefused(checkLeg(leg))).toEqual([field]);
  });

  it('too low is told the least distance that the DME can show there', () => {
    expect(checkLeg(arcWith({ dmeNm: 0.5 }))).toMatchObject({
      problem: [{ expected: expect.stringContaining('at least 0.7 NM') as string }],
    });
    expect(checkLeg(arcWith({ dmeNm: 0.7 })).ok).toBe(true);
  });

  it('has no end on the line of its course, so nothing is taken for the station passage', () => {
    expect(datedLeg(ARC_LEG, DATE_ISO)).toMatchObject({ value: { endGroundNm: null } });
  });

  it('crosses the wire with its fields checked by name', () => {
    expect(problemsOf(LegSchema, ARC_LEG, 'leg')).toEqual([]);
    const wrong = { ...ARC_LEG, arc: { dmeNm: '12', toRadialDeg: 40, turn: 'left', hold: 1 } };
    expect(problemsOf(LegSchema, wrong, 'leg').map(({ field }) => field)).toEqual([
      'leg.arc.hold',
      'leg.arc.dmeNm',
      'leg.arc.turn',
    ]);
  });
});

const ARC_PLAN: PlanEvent = { ...PLAN, legs: [ARC_LEG, IN_FROM_ARC] };

/** Inbound, the turn, then round the arc with the radial read once. */
const FLOWN: readonly FlightEvent[] = [
  ARC_PLAN,
  readingAt('B1', 60, { headingDeg: 150, needleDots: 0, flag: 'to', dmeNm: 14.2 }),
  readingAt('B2', 120, { headingDeg: 150, needleDots: 0, dmeNm: 12.6 }),
  readingAt('B3', 180, { headingDeg: 60, needleDots: 3, dmeNm: 12 }),
  readingAt('B4', 240, {
    headingDeg: 65,
    courseSetDeg: 339,
    needleDots: 0,
    flag: 'from',
    dmeNm: 12,
  }),
  readingAt('B5', 300, { headingDeg: 75, dmeNm: 12.1 }),
];

describe('the log of a flight with an arc', () => {
  it('leaves the OBS where it was set last on the arc, with the flag expected there', () => {
    const last = foldFlight(FLOWN).readings.at(-1);
    expect(last?.reading).toMatchObject({ courseSetDeg: 339, flag: 'from' });
    expect(last?.problem).toEqual([]);
    expect(last?.advice?.alerts.map(({ kind }) => kind)).toEqual(['ident-not-confirmed']);
    expect(last?.advice?.say).not.toContain('Set course');
  });

  it('expects the distance of the arc, and no needle that rests on its stop', () => {
    const state = foldFlight(FLOWN);
    const seen = expectedAt(state, 480_000);
    expect(seen?.dmeNm ?? 0).toBeGreaterThan(11.5);
    expect(seen?.dmeNm ?? 0).toBeLessThan(12.5);
    // Three minutes on are some 24 degrees of the arc.
    expect(seen?.needleDots).toBeNull();
    expect(expectedAt(state, 310_000)?.needleDots).not.toBeNull();
  });

  it('does not take a FROM about the arc for the station passage', () => {
    const state = foldFlight([...FLOWN, readingAt('B6', 360, { courseSetDeg: 145, flag: 'from' })]);
    expect(state.legIndex).toBe(0);
    expect(state.legs[0]?.passageAtMs).toBeNull();
  });

  it('begins the next leg when the pilot does, from where the aircraft is by then', () => {
    const start: FlightEvent = { id: 'L1', atMs: 345_000, kind: 'leg-started', legIndex: 1 };
    const state = foldFlight([...FLOWN, start]);
    expect(state.legIndex).toBe(1);
    expect(state.estimate?.atMs).toBe(345_000);
    const before = foldFlight(FLOWN).estimate;
    const turned =
      (state.estimate?.belief.mean.bearingRad ?? 0) - (before?.belief.mean.bearingRad ?? 0);
    // 45 s at some 100 kt on an arc of 12 NM are 6 degrees.
    expect((turned * 180) / Math.PI).toBeGreaterThan(4);
    expect((turned * 180) / Math.PI).toBeLessThan(8);
    expect(state.advice?.whichWay.turn).toBe('right');
  });

  it('counts the hold of an answer from the moment when its leg was begun', () => {
    const start: FlightEvent = { id: 'L1', atMs: 345_000, kind: 'leg-started', legIndex: 1 };
    const calls = callsDue(foldFlight([...FLOWN, start]), 300_000, 345_000);
    expect(calls).toEqual([]);
  });
});
