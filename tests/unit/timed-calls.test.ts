import { describe, expect, it } from 'vitest';
import { callsDue } from '../../src/flight/calls-due.ts';
import { expectedAt } from '../../src/flight/expected.ts';
import { foldFlight } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import type { FlightState } from '../../src/flight/state.ts';
import { callsBetween } from '../../src/procedure/calls.ts';
import type { Call, CallContext } from '../../src/procedure/call.ts';
import { coneRadiusNm } from '../../src/station/cone.ts';
import { INBOUND_FLOWN, PASSED, PLAN, stillRangeNm } from './flight-in-still-air.ts';
import { INBOUND, OUTBOUND, QEV } from './ocean-legs.ts';

const DECIMAL = { decimalWord: 'decimal' } as const;

/** All calls of a stretch, asked for second by second as a clock does. */
function ticked(state: FlightState, fromS: number, toS: number): readonly Call[] {
  const calls: Call[] = [];
  for (let s = fromS; s < toS; s += 1) calls.push(...callsDue(state, s * 1000, (s + 1) * 1000));
  return calls;
}

function keyed(calls: readonly Call[], key: string): Call | undefined {
  return calls.find((call) => call.key.startsWith(key));
}

const INBOUND_STATE = foldFlight(INBOUND_FLOWN);
const OUTBOUND_STATE = foldFlight([...INBOUND_FLOWN, PASSED]);

describe('calls inbound', () => {
  const calls = ticked(INBOUND_STATE, 140, 600);

  it('come once each', () => {
    const keys = calls.map((call) => call.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.length).toBeGreaterThanOrEqual(4);
  });

  it('count two miles to go with what the DME will read there, height included', () => {
    const call = keyed(calls, 'to-go:0:2');
    // Two miles over ground and 4,090 ft above the station are 2.11 NM of slant range.
    expect(call?.say).toBe('Two miles to go. D M E two decimal one.');
    expect(stillRangeNm((call?.atMs ?? 0) / 1000)).toBeCloseTo(2, 0);
  });

  it('announce the cone before its edge, and leave the mile beside it out', () => {
    const call = keyed(calls, 'cone:0');
    expect(call?.say).toMatch(
      /^Station in one decimal three miles\. Hold heading one one one, ignore the needle\.$/,
    );
    const heightFt = INBOUND.altitudeFt - QEV.elevationFt;
    expect(stillRangeNm((call?.atMs ?? 0) / 1000)).toBeGreaterThan(coneRadiusNm(heightFt));
    expect(keyed(calls, 'to-go:0:1')).toBeUndefined();
  });

  it('ask for the FROM flag when the station is due', () => {
    const call = keyed(calls, 'to-go:0:0');
    expect(call?.say).toBe('Station about now. Say when the flag shows FROM.');
    // The station is reached 303 s after the start of the flight; the speed is known to about 5 %.
    expect(Math.abs((call?.atMs ?? 0) / 1000 - 303)).toBeLessThan(10);
  });

  it('ask for the next reading when it is worth most', () => {
    const due = 140_000 + (INBOUND_STATE.advice?.nextReadingInS ?? 0) * 1000;
    expect(keyed(calls, 'reading:')?.atMs).toBe(due);
  });

  it('do not ask for FROM again when the answer in the cone has asked', () => {
    const off: FlightEvent = { id: 'B9', atMs: 290_000, kind: 'reading', flag: 'off', dmeNm: 0.8 };
    const state = foldFlight([...INBOUND_FLOWN, off]);
    expect(state.advice?.phase).toBe('passage');
    expect(keyed(ticked(state, 290, 400), 'to-go:0:0')).toBeUndefined();
  });
});

describe('calls while the course is being intercepted', () => {
  it('come when the way actually flown has so much left, not when a straight line would', () => {
    const wide: FlightEvent = {
      id: 'B0',
      atMs: 20_000,
      kind: 'reading',
      headingDeg: 40,
      needleDots: -4,
      flag: 'to',
      dmeNm: 4.6,
    };
    const state = foldFlight([PLAN, wide]);
    const call = keyed(ticked(state, 20, 400), 'to-go:0:2');
    if (call === undefined) throw new Error('two miles are called on this flight');
    const toGoNm = expectedAt(state, call.atMs)?.howFar.toGoNm ?? 0;
    expect(Math.abs(toGoNm - 2)).toBeLessThan(0.1);
  });
});

describe('calls outbound', () => {
  const calls = ticked(OUTBOUND_STATE, 313, 1200);

  it('count two, one and none to the destination with the DME there', () => {
    expect(['2', '1', '0'].map((miles) => keyed(calls, `to-go:1:${miles}`)?.say)).toEqual([
      'Two miles to go. D M E one two decimal zero.',
      'One mile to go. D M E one three decimal zero.',
      'Destination now. D M E one four decimal zero.',
    ]);
  });

  it('come in time order, a mile apart at the groundspeed', () => {
    const [two, one, none] = ['2', '1', '0'].map(
      (miles) => keyed(calls, `to-go:1:${miles}`)?.atMs ?? 0,
    );
    // 95 kt: 37.9 s a mile; the estimate may be a few knots off.
    for (const gap of [(one ?? 0) - (two ?? 0), (none ?? 0) - (one ?? 0)]) {
      expect(Math.abs(gap / 1000 - 37.9)).toBeLessThan(3);
    }
  });

  it('name the end of a leg that is not the last one', () => {
    const plan = { ...PLAN, legs: [INBOUND, OUTBOUND, INBOUND] } as FlightEvent;
    const state = foldFlight([plan, ...INBOUND_FLOWN.slice(1), PASSED]);
    expect(keyed(ticked(state, 313, 1200), 'to-go:1:0')?.say).toMatch(/^End of the leg now\./);
  });

  it('do not look for the place at the start of a leg that knows it', () => {
    expect(keyed(calls, 'reading:')?.say).toBe('Needle, flag and distance, please.');
  });
});

describe('the end of a hold', () => {
  const advice = INBOUND_STATE.advice;
  const estimate = INBOUND_STATE.estimate;
  if (advice === null || estimate === null) throw new Error('the flight above has an answer');
  const whichWay = {
    turn: 'left',
    turnDeg: 15,
    headingDeg: 97,
    holdS: 75,
    thenHeadingDeg: 108,
  } as const;
  const context: CallContext = {
    leg: estimate.leg,
    legIndex: 0,
    isLastLeg: false,
    estimate,
    advice: { ...advice, whichWay, nextReadingInS: 90 },
    answeredAtMs: 140_000,
    manner: DECIMAL,
  };

  it('is called to the second, to be done at once', () => {
    const [call] = callsBetween(context, 214_000, 215_000);
    expect(call).toMatchObject({
      atMs: 215_000,
      say: 'Now heading one zero eight.',
      urgency: 'now',
    });
  });

  it('asks for the needle when the reading that was due has not come', () => {
    const late = { ...context, advice: { ...context.advice, nextReadingInS: 60 } };
    expect(callsBetween(late, 214_000, 215_000)[0]?.say).toBe(
      'Now heading one zero eight. Read the needle.',
    );
  });

  it('is dropped when the device slept through it', () => {
    expect(callsBetween(context, 214_000, 260_000).map((call) => call.key)).not.toContain(
      'hold:140000',
    );
  });

  it('is still given a little late when it was not said', () => {
    const said = new Set<string>();
    const late = callsBetween(context, 217_000, 218_000, said);
    expect(late.map((call) => call.key)).toContain('hold:140000');
    const again = callsBetween(context, 217_000, 218_000, new Set(['hold:140000']));
    expect(again.map((call) => call.key)).not.toContain('hold:140000');
    expect(callsBetween(context, 217_000, 218_000).map((call) => call.key)).not.toContain(
      'hold:140000',
    );
  });

  it('is not called where one heading is all there is', () => {
    const straight = { ...whichWay, thenHeadingDeg: 97 };
    const calls = callsBetween(
      { ...context, advice: { ...advice, whichWay: straight } },
      0,
      215_000,
    );
    expect(calls.map((call) => call.key)).not.toContain('hold:140000');
  });

  it('without a known groundspeed makes no distance call: no time is invented', () => {
    const howFar = { ...advice.howFar, groundSpeedKt: null, toGoS: null };
    const blind = { ...context, advice: { ...advice, howFar } };
    const keys = [];
    for (let s = 140; s < 600; s += 1) {
      keys.push(...callsBetween(blind, s * 1000, (s + 1) * 1000).map((call) => call.key));
    }
    expect(keys.filter((key) => /^(to-go|cone)/.test(key))).toEqual([]);
  });
});

describe('calls of a flight', () => {
  it('are none before the first answer and after the end', () => {
    expect(ticked(foldFlight([PLAN]), 0, 300)).toEqual([]);
    const finished: FlightEvent = { id: 'Z', atMs: 141_000, kind: 'finished' };
    expect(ticked(foldFlight([...INBOUND_FLOWN, finished]), 141, 600)).toEqual([]);
  });

  it('have no figures and no abbreviations', () => {
    for (const call of [...ticked(INBOUND_STATE, 140, 600), ...ticked(OUTBOUND_STATE, 313, 1200)]) {
      expect(call.say).not.toMatch(/[0-9]|\b(DME|OBS|NM)\b|undefined|null|NaN/);
    }
  });
});
