import { describe, expect, it } from 'vitest';
import { foldFlight } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import { FIRST, PLAN, SECOND } from './ocean-flight.ts';
import { AIRCRAFT, INBOUND, OUTBOUND, XUN } from './ocean-legs.ts';

describe('the ident', () => {
  const ident = (outcome: 'confirmed' | 'doubted', atS: number, legIndex = 0): FlightEvent => ({
    id: `I${atS}`,
    atMs: atS * 1000,
    kind: 'ident',
    legIndex,
    outcome,
    by: 'tool',
  });
  const hasAlert = (events: readonly FlightEvent[]): boolean =>
    foldFlight(events).advice?.alerts.some((alert) => alert.kind === 'ident-not-confirmed') ??
    false;

  it('is missing from every answer until it is confirmed', () => {
    expect(hasAlert([PLAN, FIRST])).toBe(true);
    expect(foldFlight([PLAN, FIRST]).advice?.say).toMatch(/Ident not confirmed\.$/);
    expect(foldFlight([PLAN, FIRST, SECOND]).advice?.say).toMatch(/Ident not confirmed\.$/);
    expect(hasAlert([PLAN, ident('confirmed', 30), FIRST])).toBe(false);
  });

  it('changes the standing answer when it comes after it, and not the record of what was said', () => {
    const state = foldFlight([PLAN, FIRST, ident('confirmed', 90)]);
    expect(state.advice?.say).not.toContain('Ident not confirmed');
    expect(state.readings[0]?.advice?.say).toContain('Ident not confirmed');
  });

  it('in doubt again is missing again', () => {
    expect(hasAlert([PLAN, ident('confirmed', 30), FIRST, ident('doubted', 90)])).toBe(true);
  });

  it('is not confirmed by skipping it with a reason', () => {
    const skip: FlightEvent = {
      id: 'S1',
      atMs: 30_000,
      kind: 'check',
      legIndex: 0,
      item: 'identify',
      outcome: 'skipped',
      reason: 'no sound in the headset',
    };
    const state = foldFlight([PLAN, skip, FIRST]);
    expect(state.legs[0]?.checks.identify?.outcome).toBe('skipped');
    expect(hasAlert([PLAN, skip, FIRST])).toBe(true);
  });

  it('ticked without having been heard, or skipped without a reason, stays open', () => {
    for (const outcome of ['done', 'skipped'] as const) {
      const tick: FlightEvent = {
        id: 'S1',
        atMs: 30_000,
        kind: 'check',
        legIndex: 0,
        item: 'identify',
        outcome,
      };
      expect(foldFlight([PLAN, tick]).legs[0]?.checks.identify).toBeUndefined();
    }
  });

  it('holds for the next leg on the same station and not for another station', () => {
    const other = { ...PLAN, legs: [INBOUND, { ...OUTBOUND, station: XUN }] } as FlightEvent;
    expect(foldFlight([PLAN, ident('confirmed', 30)]).legs[1]?.identConfirmedAtMs).toBe(30_000);
    expect(foldFlight([other, ident('confirmed', 30)]).legs[1]?.identConfirmedAtMs).toBeNull();
  });
});

describe('the checklist in the log', () => {
  const check = (
    id: string,
    atS: number,
    outcome: 'done' | 'skipped' | 'reopened',
  ): FlightEvent => ({
    id,
    atMs: atS * 1000,
    kind: 'check',
    legIndex: 0,
    item: 'flags',
    outcome,
  });

  it('keeps what was done, and opens it again', () => {
    expect(foldFlight([PLAN, check('D1', 5, 'done')]).legs[0]?.checks.flags).toEqual({
      outcome: 'done',
      atMs: 5000,
    });
    const reopened = foldFlight([PLAN, check('D1', 5, 'done'), check('D2', 6, 'reopened')]);
    expect(reopened.legs[0]?.checks).toEqual({});
  });

  it('passes over a leg that is not in the plan', () => {
    const stray = { ...check('D1', 5, 'done'), legIndex: 7 } as FlightEvent;
    expect(foldFlight([PLAN, stray]).legs).toEqual(foldFlight([PLAN]).legs);
  });
});

describe('a plan that replaces another', () => {
  const replan = (changes: Partial<Extract<FlightEvent, { kind: 'plan' }>>): FlightEvent => ({
    ...PLAN,
    ...changes,
    id: 'P2',
    atMs: 90_000,
  });

  it('estimates the leg anew with what it puts right, and leaves given answers alone', () => {
    const faster = { ...AIRCRAFT, trueAirspeedKt: 120 };
    const state = foldFlight([PLAN, FIRST, replan({ aircraft: faster })]);
    const atOnce = foldFlight([{ ...PLAN, aircraft: faster }, FIRST]);
    expect(state.estimate).toEqual(atOnce.estimate);
    expect(state.readings[0]?.advice).toEqual(foldFlight([PLAN, FIRST]).advice);
  });

  it('keeps the progress of a leg that is still the same and drops that of one that is not', () => {
    const ident: FlightEvent = {
      id: 'I1',
      atMs: 30_000,
      kind: 'ident',
      legIndex: 0,
      outcome: 'confirmed',
      by: 'ear',
    };
    const same = foldFlight([
      PLAN,
      ident,
      FIRST,
      replan({ legs: [{ ...INBOUND, courseDeg: 115 }] }),
    ]);
    expect(same.legs).toHaveLength(1);
    expect(same.legs[0]?.identConfirmedAtMs).toBe(30_000);
    const other = foldFlight([
      PLAN,
      ident,
      FIRST,
      replan({ legs: [{ ...INBOUND, station: XUN }] }),
    ]);
    expect(other.legs[0]?.identConfirmedAtMs).toBeNull();
    expect(other.estimate?.readings).toEqual([]);
  });

  it('without legs leaves nothing to answer and loses nothing', () => {
    const state = foldFlight([PLAN, FIRST, replan({ legs: [] }), SECOND]);
    expect(state.readings).toHaveLength(2);
    expect(state.readings[1]?.problem[0]?.field).toBe('legs');
  });
});
