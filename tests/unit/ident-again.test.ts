import { describe, expect, it } from 'vitest';
import { callsDue } from '../../src/flight/calls-due.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import { foldFlight } from '../../src/flight/fold.ts';
import type { FlightState } from '../../src/flight/state.ts';
import type { Call } from '../../src/procedure/call.ts';
import type { Alert, AlertKind } from '../../src/track/guidance.ts';
import { INBOUND_FLOWN, PASSED } from './flight-in-still-air.ts';

/** The ident of this flight is confirmed at 1 ms; its last reading is at 140 s. */
const STATE = foldFlight(INBOUND_FLOWN);
const MIN = 60;

const confirmed = (atS: number): FlightEvent => ({
  id: `C${String(atS).padStart(5, '0')}`,
  atMs: atS * 1000,
  kind: 'ident',
  legIndex: 0,
  outcome: 'confirmed',
  by: 'tool',
  confidence: 0.999,
});

/** The calls for the ident of a stretch, asked second by second as the page does. */
function idents(
  state: FlightState,
  [fromS, toS]: readonly [number, number],
  againMin: number | null,
  said = new Set<string>(),
): readonly Call[] {
  const calls: Call[] = [];
  for (let s = fromS; s < toS; s += 1) {
    for (const call of callsDue(state, s * 1000, (s + 1) * 1000, undefined, said, againMin)) {
      said.add(call.key);
      if (call.key.startsWith('ident-')) calls.push(call);
    }
  }
  return calls;
}

/** A flight that stands still after its last reading, so that only the clock goes on. */
const stillCalled = (againMin: number | null, toS: number, state = STATE): readonly Call[] =>
  idents(state, [140, toS], againMin);

describe('an ident that was confirmed is asked for again', () => {
  it('after as many minutes as set, and each time after as many more', () => {
    const calls = stillCalled(5, 16 * MIN);
    expect(calls.map(({ atMs }) => Math.round(atMs / 1000))).toEqual([300, 600, 900]);
    expect(calls[0]?.say).toBe('Identify Quebec Echo Victor again.');
    expect(calls[0]?.urgency).toBe('routine');
  });

  it('counted from when it was confirmed again', () => {
    const state = foldFlight([...INBOUND_FLOWN, confirmed(200)]);
    expect(stillCalled(5, 11 * MIN, state).map(({ atMs }) => atMs)).toEqual([500_000]);
  });

  it.each([null, 0])('never when that is set off (%s)', (againMin) => {
    expect(stillCalled(againMin, 40 * MIN)).toEqual([]);
  });

  it('not while it is in doubt: every answer says so anyway', () => {
    const doubted: FlightEvent = {
      id: 'C1',
      atMs: 150_000,
      kind: 'ident',
      legIndex: 0,
      outcome: 'doubted',
      by: 'ear',
    };
    const state = foldFlight([...INBOUND_FLOWN, doubted]);
    expect(idents(state, [150, 20 * MIN], 5)).toEqual([]);
  });

  it('not over the station, but as soon as that is behind', () => {
    const busy: FlightEvent = { id: 'B9', atMs: 290_000, kind: 'reading', flag: 'off', dmeNm: 0.8 };
    const over = foldFlight([...INBOUND_FLOWN, busy]);
    expect(['near-station', 'passage']).toContain(over.advice?.phase);
    const said = new Set<string>();
    expect(idents(over, [290, 313], 5, said)).toEqual([]);
    const out = foldFlight([...INBOUND_FLOWN, busy, PASSED, outboundReading(350)]);
    expect(['near-station', 'passage']).not.toContain(out.advice?.phase);
    expect(idents(out, [350, 400], 5, said).map(({ atMs }) => atMs)).toEqual([300_001]);
  });

  it('once, though the flight goes on to the next leg on the same station', () => {
    const said = new Set<string>();
    expect(idents(STATE, [140, 302], 5, said)).toHaveLength(1);
    const out = foldFlight([...INBOUND_FLOWN, PASSED, outboundReading(350)]);
    expect(idents(out, [313, 590], 5, said)).toEqual([]);
  });
});

/** On the way out at 95 kt, a mile and more from the station. */
function outboundReading(atS: number): FlightEvent {
  const groundNm = ((atS - 303) * 95) / 3600;
  return {
    id: `D${atS}`,
    atMs: atS * 1000,
    kind: 'reading',
    needleDots: 0,
    flag: 'from',
    dmeNm: Math.round(Math.hypot(groundNm, 0.673) * 10) / 10,
  };
}

/** The same flight with the answers from a moment on doubting something. */
function doubting(state: FlightState, kind: AlertKind, fromS: number): FlightState {
  const alert: Alert = { kind, ask: 'Listen to the ident.' };
  const readings = state.readings.map((each) =>
    each.advice === null || each.atMs < fromS * 1000
      ? each
      : { ...each, advice: { ...each.advice, alerts: [alert] } },
  );
  const last = state.advice;
  return { ...state, readings, advice: last && { ...last, alerts: [alert] } };
}

describe('an ident whose station the answers doubt', () => {
  it.each(['wrong-station', 'dme-disagrees'] as const)(
    'is asked for by name 20 s after the first of them (%s), whatever is set',
    (kind) => {
      const calls = idents(doubting(STATE, kind, 140), [140, 20 * MIN], null);
      expect(calls.map(({ atMs, urgency }) => ({ atMs, urgency }))).toEqual([
        { atMs: 160_000, urgency: 'soon' },
      ]);
    },
  );

  it('is not asked for again in the answers that follow', () => {
    expect(idents(doubting(STATE, 'wrong-station', 80), [140, 20 * MIN], null)).toHaveLength(1);
    expect(
      idents(
        doubting(STATE, 'wrong-station', 80),
        [140, 20 * MIN],
        null,
        new Set(['ident-doubt:80000']),
      ),
    ).toEqual([]);
  });

  it('is not asked for when it has been confirmed since', () => {
    const state = foldFlight([...INBOUND_FLOWN, confirmed(150)]);
    expect(idents(doubting(state, 'wrong-station', 140), [150, 300], null)).toEqual([]);
  });

  it('is not asked for by doubts of another kind', () => {
    expect(idents(doubting(STATE, 'needle-not-moving', 140), [140, 300], null)).toEqual([]);
  });
});

describe('an ident event with how sure the tool was', () => {
  it('folds to the same state as one without, as older logs have it', () => {
    const sure = confirmed(150);
    const { confidence, ...plain } = sure as Extract<FlightEvent, { kind: 'ident' }>;
    expect(confidence).toBe(0.999);
    expect(foldFlight([...INBOUND_FLOWN, sure])).toEqual(foldFlight([...INBOUND_FLOWN, plain]));
  });

  it('does what hearing it does: the Identify gate is passed', () => {
    const unheard = INBOUND_FLOWN.filter(({ kind }) => kind !== 'ident');
    expect(foldFlight(unheard).legs[0]?.identConfirmedAtMs).toBeNull();
    const state = foldFlight([...unheard, confirmed(150)]);
    expect(state.legs[0]?.identConfirmedAtMs).toBe(150_000);
    expect(state.legs[0]?.checks.identify?.outcome).toBe('done');
  });
});
