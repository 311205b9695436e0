import { describe, expect, it } from 'vitest';
import { checklistNow } from '../../src/flight/checklist-now.ts';
import { expectedAt } from '../../src/flight/expected.ts';
import { foldFlight } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import { INBOUND_FLOWN, PASSED, PLAN, inboundReading } from './flight-in-still-air.ts';
import { INBOUND, OUTBOUND, XUN } from './ocean-legs.ts';

const FLOWN: readonly FlightEvent[] = [...INBOUND_FLOWN, PASSED];

describe('the station passage', () => {
  const state = foldFlight(FLOWN);

  it('starts the clock and the next leg by itself', () => {
    expect(state.legIndex).toBe(1);
    expect(state.legs[0]?.passageAtMs).toBe(PASSED.atMs);
    expect(state.legs[1]?.startedAtMs).toBe(PASSED.atMs);
  });

  it('is spoken: clock, course, turn', () => {
    expect(state.advice?.phase).toBe('passage');
    expect(state.advice?.say).toMatch(
      /^Station passage\. Clock started\. Set course one four zero\. Turn right (two|three) [a-z]+ degrees, heading one [a-z]+ [a-z]+\.$/,
    );
    expect(state.advice?.why).toMatch(/^The flag has turned to FROM/);
  });

  it('leaves the reading with the leg on which it was taken', () => {
    expect(state.readings.at(-1)?.legIndex).toBe(0);
    expect(state.readings.at(-1)?.advice).toEqual(state.advice);
  });

  it('carries over where the aircraft is and how far it is to the next end', () => {
    expect(state.estimate?.leg.leg).toEqual(OUTBOUND);
    // DME 14 from 0.26 NM beyond the station, at 4,090 ft above it.
    expect(Math.abs((state.advice?.howFar.toGoNm ?? 0) - 13.7)).toBeLessThan(0.7);
  });

  it('opens the checklist of the next leg at the course, with the heading just advised', () => {
    const lines = checklistNow(state);
    expect(lines.map((line) => line.item)).toEqual(['set-course', 'turn', 'look-out']);
    const heading = /heading ([a-z ]+)\./.exec(state.advice?.say ?? '')?.[1];
    expect(lines[1]?.say).toContain(`heading ${heading ?? '(none said)'}.`);
  });

  it('foresees the panel of the next leg', () => {
    const later = expectedAt(state, PASSED.atMs + 120_000);
    expect(later?.flag).toBe('from');
    expect(later?.dmeNm ?? 0).toBeGreaterThan(2.5);
  });

  it('is undone by taking the reading back', () => {
    const back: FlightEvent = { id: 'T1', atMs: 320_000, kind: 'taken-back', eventId: PASSED.id };
    const undone = foldFlight([...FLOWN, back]);
    expect(undone.legIndex).toBe(0);
    expect(undone.legs).toEqual(foldFlight(INBOUND_FLOWN).legs);
  });

  it('is not made by an OFF in the cone, nor by a FROM with another course set', () => {
    const off: FlightEvent = { id: 'B9', atMs: 290_000, kind: 'reading', flag: 'off', dmeNm: 0.8 };
    expect(foldFlight([...INBOUND_FLOWN, off]).legIndex).toBe(0);
    const radial: FlightEvent = {
      id: 'B9',
      atMs: 160_000,
      kind: 'reading',
      flag: 'from',
      courseSetDeg: 292,
      needleDots: 0,
    };
    expect(foldFlight([...INBOUND_FLOWN, radial]).legIndex).toBe(0);
  });

  it('names the next station where another one is to be tuned, and that nobody has heard it', () => {
    const plan = { ...PLAN, legs: [INBOUND, { ...INBOUND, station: XUN }] } as FlightEvent;
    const say = foldFlight([plan, ...FLOWN.slice(1)]).advice?.say ?? '';
    expect(say).toContain('Next station Xray Uniform November, one one five decimal two.');
    expect(say).toMatch(/Ident not confirmed\.$/);
  });

  it('on the last leg ends there', () => {
    const state1 = foldFlight([{ ...PLAN, legs: [INBOUND] } as FlightEvent, ...FLOWN.slice(1)]);
    expect(state1.legIndex).toBe(0);
    expect(state1.legs[0]?.passageAtMs).toBe(PASSED.atMs);
    expect(state1.advice?.say).toMatch(/^Station passage\. Hold heading/);
  });

  it('keeps its time on the last leg when FROM is read again', () => {
    const again: FlightEvent = { ...PASSED, id: 'B0343', atMs: 343_000, dmeNm: 1.2 } as FlightEvent;
    const plan = { ...PLAN, legs: [INBOUND] } as FlightEvent;
    const later = foldFlight([plan, ...FLOWN.slice(1), again]);
    expect(later.legs[0]?.passageAtMs).toBe(PASSED.atMs);
    expect(later.advice?.say).toMatch(/^Past the station/);
  });
});

describe('a passage that was none', () => {
  const to = (
    atS: number,
    given: Partial<Extract<FlightEvent, { kind: 'reading' }>> = {},
  ): FlightEvent => ({
    id: `C${atS}`,
    atMs: atS * 1000,
    kind: 'reading',
    flag: 'to',
    ...given,
  });
  const before = foldFlight(INBOUND_FLOWN);

  it('is taken back by a TO soon after it, and the pilot hears so', () => {
    const state = foldFlight([...FLOWN, to(320)]);
    expect(state.legIndex).toBe(0);
    expect(state.legs).toEqual(before.legs);
    expect(state.readings.at(-1)?.legIndex).toBe(0);
    expect(state.advice?.say).toMatch(/^Not past the station yet\./);
    expect(foldFlight([...FLOWN, to(320), { ...PASSED, id: 'D1', atMs: 330_000 }]).legIndex).toBe(
      1,
    );
  });

  it('is taken back on the last leg too', () => {
    const plan = { ...PLAN, legs: [INBOUND] } as FlightEvent;
    const state = foldFlight([plan, ...FLOWN.slice(1), to(320)]);
    expect(state.legs[0]?.passageAtMs).toBeNull();
    expect(state.advice?.say).toMatch(/^Not past the station yet\./);
  });

  it('stands once FROM has been read on the next leg, or minutes later', () => {
    const from = { ...PASSED, id: 'C1', atMs: 330_000, dmeNm: 1.1 } as FlightEvent;
    expect(foldFlight([...FLOWN, from, to(360)]).legIndex).toBe(1);
    expect(foldFlight([...FLOWN, to(600)]).legIndex).toBe(1);
  });

  it('stands where TO is what the next course shows', () => {
    const back = { ...OUTBOUND, courseDeg: 280 };
    const plan = { ...PLAN, legs: [INBOUND, back] } as FlightEvent;
    expect(foldFlight([plan, ...FLOWN.slice(1), to(320)]).legIndex).toBe(1);
    const onward = { ...PLAN, legs: [INBOUND, { ...INBOUND, station: XUN }] } as FlightEvent;
    expect(foldFlight([onward, ...FLOWN.slice(1), to(320)]).legIndex).toBe(1);
  });

  it('is not made by a first FROM far from the station', () => {
    const from = { ...PASSED, id: 'C1', atMs: 20_000, needleDots: 0, dmeNm: 11.2 } as FlightEvent;
    const state = foldFlight([PLAN, from]);
    expect(state.legIndex).toBe(0);
    expect(state.legs[0]?.passageAtMs).toBeNull();
    expect(state.advice?.phase).not.toBe('passage');
  });
});

describe('starting a leg by hand', () => {
  it('goes on to it without a passage', () => {
    const start: FlightEvent = { id: 'S1', atMs: 200_000, kind: 'leg-started', legIndex: 1 };
    const state = foldFlight([...INBOUND_FLOWN, start]);
    expect(state.legIndex).toBe(1);
    expect(state.legs[0]?.passageAtMs).toBeNull();
    expect(state.advice).not.toBeNull();
  });

  it('goes back after a passage that was none', () => {
    const back: FlightEvent = { id: 'S1', atMs: 314_000, kind: 'leg-started', legIndex: 0 };
    const state = foldFlight([...FLOWN, back]);
    expect(state.legIndex).toBe(0);
    expect(state.legs[0]?.passageAtMs).toBeNull();
    const next = foldFlight([...FLOWN, back, inboundReading(330)]);
    expect(next.readings.at(-1)?.legIndex).toBe(0);
  });

  it('passes over a leg that the plan does not have', () => {
    const stray: FlightEvent = { id: 'S1', atMs: 200_000, kind: 'leg-started', legIndex: 9 };
    expect(foldFlight([...INBOUND_FLOWN, stray]).legIndex).toBe(0);
  });
});

describe('what the panel is expected to show', () => {
  it('is nothing before a reading tells the place, and nothing after the flight', () => {
    expect(expectedAt(foldFlight([PLAN]), 1000)).toBeNull();
    const finished: FlightEvent = { id: 'Z', atMs: 141_000, kind: 'finished' };
    expect(expectedAt(foldFlight([...INBOUND_FLOWN, finished]), 150_000)).toBeNull();
  });

  it('is a DME that counts down and a needle about centred', () => {
    const state = foldFlight(INBOUND_FLOWN);
    const soon = expectedAt(state, 170_000);
    expect(soon?.flag).toBe('to');
    // 30 s at 95 kt are 0.79 NM; the last DME was 4.4.
    expect(Math.abs((soon?.dmeNm ?? 0) - 3.6)).toBeLessThan(0.3);
    expect(Math.abs(soon?.needleDots ?? 9)).toBeLessThan(0.5);
  });

  it('is meant for the course of the leg also after a test with another one', () => {
    const test: FlightEvent = {
      id: 'B9',
      atMs: 150_000,
      kind: 'reading',
      courseSetDeg: 109,
      needleDots: 1.5,
    };
    const state = foldFlight([...INBOUND_FLOWN, test]);
    expect(Math.abs(expectedAt(state, 170_000)?.needleDots ?? 9)).toBeLessThan(0.75);
  });
});
