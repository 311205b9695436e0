import { describe, expect, it } from 'vitest';
import { callsDue } from '../../src/flight/calls-due.ts';
import { foldFlight } from '../../src/flight/fold.ts';
import type { FlightEvent } from '../../src/flight/event.ts';
import type { FlightState } from '../../src/flight/state.ts';
import type { Call, CallContext } from '../../src/procedure/call.ts';
import { callsBetween } from '../../src/procedure/calls.ts';
import { INBOUND_FLOWN, PASSED, PLAN } from './flight-in-still-air.ts';
import { INBOUND } from './ocean-legs.ts';

/** Still air, far out: nothing but readings is worth a call for a long time. */
const FAR: FlightEvent = {
  id: 'B1',
  atMs: 20_000,
  kind: 'reading',
  headingDeg: 111,
  needleDots: 0,
  flag: 'to',
  dmeNm: 60,
};

/** Left of the course by 3.5 NM, so the way back is a cut of many minutes. */
const WIDE: FlightEvent = { ...FAR, needleDots: 2.5, dmeNm: 40 };

/** What is called from the last reading on if nobody gives another one. */
function unanswered(state: FlightState, forS: number): readonly Call[] {
  const said = new Set<string>();
  const calls: Call[] = [];
  const fromS = (state.readings.at(-1)?.atMs ?? 0) / 1000;
  for (let s = fromS; s < fromS + forS; s += 1) {
    for (const call of callsDue(state, s * 1000, (s + 1) * 1000, undefined, said)) {
      said.add(call.key);
      calls.push(call);
    }
  }
  return calls;
}

function sayings(calls: readonly Call[]): readonly string[] {
  return calls.map((call) => call.say);
}

describe('a reading that nobody gives', () => {
  const state = foldFlight([PLAN, FAR]);
  const calls = unanswered(state, 900).filter((call) => call.key.startsWith('reading:'));
  const dueMs = 20_000 + (state.advice?.nextReadingInS ?? 0) * 1000;

  it('is asked for again each minute, and after three minutes every other minute', () => {
    const afterS = calls.map((call) => (call.atMs - dueMs) / 1000);
    expect(afterS.slice(0, 6)).toEqual([0, 60, 120, 180, 300, 420]);
  });

  it('makes the answer old after two minutes, and that is said', () => {
    expect(sayings(calls)[1]).toBe('Needle, flag and distance, please.');
    expect(sayings(calls)[2]).toBe('Old answer: needle, flag and distance, please.');
  });
});

describe('a reading that is due at the moment of a turn', () => {
  it('is asked for after it, not in one breath with it', () => {
    const { estimate, advice } = foldFlight([PLAN, FAR]);
    if (estimate === null || advice === null) throw new Error('the flight above has an answer');
    const whichWay = { ...advice.whichWay, holdS: 60, thenHeadingDeg: 100 };
    const context: CallContext = {
      leg: estimate.leg,
      legIndex: 0,
      isLastLeg: false,
      estimate,
      advice: { ...advice, whichWay, nextReadingInS: 60 },
      answeredAtMs: 20_000,
      manner: { decimalWord: 'decimal' },
    };
    const [turn, reading] = callsBetween(context, 79_000, 90_000);
    expect(turn?.say).toMatch(/^Now heading one zero zero/);
    expect((reading?.atMs ?? 0) - (turn?.atMs ?? 0)).toBe(8000);
  });
});

describe('a lone heading back to the course', () => {
  const state = foldFlight([PLAN, WIDE]);
  const way = state.advice?.whichWay;
  const calls = unanswered(state, 1500);

  it('is never flown on through the course without a word', () => {
    const turn = calls.find((call) => /^(Now heading|You should be on course now)/.test(call.say));
    // Still air: the heading along the course is 111.
    expect(turn?.say).toMatch(/heading one one (zero|one|two)\. Read the needle\.$/);
    const cutDeg = 111 - (way?.headingDeg ?? 0);
    const acrossNmPerS = (95 / 3600) * Math.sin((Math.abs(cutDeg) * Math.PI) / 180);
    // Five degrees of forty miles are 3.5 NM; DME and needle leave a tenth of it open.
    const onCourseS = 3.5 / acrossNmPerS;
    expect(Math.abs(((turn?.atMs ?? 0) - 20_000) / 1000 - onCourseS)).toBeLessThan(0.2 * onCourseS);
  });
});

describe('the cone after an intercept', () => {
  it('is flown on the heading that keeps the line, not on the cut', () => {
    const cut: FlightEvent = { ...FAR, headingDeg: 111, needleDots: -2, dmeNm: 5 };
    const call = unanswered(foldFlight([PLAN, cut]), 400).find((each) =>
      each.key.startsWith('cone:'),
    );
    expect(call?.say).toMatch(
      /^Station in one decimal three miles\. Hold heading one one (zero|one|two), ignore the needle\.$/,
    );
  });
});

describe('near the station', () => {
  it('nobody is asked for a needle that is to be ignored, only for FROM', () => {
    const calls = unanswered(foldFlight(INBOUND_FLOWN), 600);
    const station = calls.find((call) => call.key === 'to-go:0:0');
    const later = calls.filter((call) => call.atMs > (station?.atMs ?? Infinity));
    expect(later.length).toBeGreaterThan(1);
    expect(new Set(sayings(later))).toEqual(new Set(['Does the flag show FROM?']));
    const firstS = ((later[0]?.atMs ?? 0) - (station?.atMs ?? 0)) / 1000;
    expect(Math.abs(firstS - 30)).toBeLessThan(5);
  });

  it('the cone is not called when the answer has just told of it', () => {
    const near: FlightEvent = {
      ...FAR,
      id: 'B9',
      atMs: 270_000,
      headingDeg: 111,
      flag: 'to',
      dmeNm: 1.1,
    };
    const state = foldFlight([...INBOUND_FLOWN, near]);
    expect(state.advice?.say).toContain('Ignore the needle.');
    expect(unanswered(state, 60).some((call) => call.key.startsWith('cone:'))).toBe(false);
  });

  it('a flight that ends over its station asks for nothing once it is passed', () => {
    const plan = { ...PLAN, legs: [INBOUND] } as FlightEvent;
    const state = foldFlight([plan, ...INBOUND_FLOWN.slice(1), PASSED]);
    expect(unanswered(state, 600)).toEqual([]);
  });
});

describe('a mile that the answer has just told', () => {
  it('is not called seconds later', () => {
    const near: FlightEvent = { ...FAR, id: 'B9', atMs: 200_000, dmeNm: 3 };
    const state = foldFlight([...INBOUND_FLOWN, near]);
    const mile = unanswered(state, 200).find((call) => call.key === 'to-go:0:2');
    expect(state.advice?.say).toContain('miles to go');
    if (mile !== undefined) expect(mile.atMs - 200_000).toBeGreaterThanOrEqual(15_000);
    const closer: FlightEvent = { ...near, atMs: 226_000, dmeNm: 2.2 };
    const calls = unanswered(foldFlight([...INBOUND_FLOWN, closer]), 15);
    expect(calls.some((call) => call.key === 'to-go:0:2')).toBe(false);
  });
});

describe('a mile before a destination known by its DME', () => {
  it('is called with its DME even when an answer came seconds before', () => {
    // 2.1 miles over ground before DME 14.0: the mark comes within 15 s of the answer.
    const near: FlightEvent = {
      ...FAR,
      id: 'B9',
      atMs: 720_000,
      headingDeg: 141,
      flag: 'from',
      dmeNm: 11.9,
    };
    const state = foldFlight([...INBOUND_FLOWN, PASSED, near]);
    const mile = unanswered(state, 15).find((call) => call.key === 'to-go:1:2');
    expect(mile?.say).toBe('Two miles to go. D M E one two decimal zero.');
  });
});

describe('the due call', () => {
  it('asks for the readings first where the needle is to be tested', () => {
    const state = foldFlight([
      PLAN,
      ...[20, 80, 140].map((atS, i): FlightEvent => ({
        ...FAR,
        id: `B${i}`,
        atMs: atS * 1000,
        dmeNm: Math.round((60 - (95 * (atS - 20)) / 3600) * 10) / 10,
      })),
    ]);
    const tests = sayings(unanswered(state, 300)).filter((words) => words.includes('O B S'));
    expect(tests).toEqual(['Needle, flag and distance, with the O B S three degrees left.']);
  });
});
