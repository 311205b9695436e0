import { describe, expect, it } from 'vitest';
import type { Leg } from '../../src/leg/leg.ts';
import { adviceOf } from '../../src/procedure/advise.ts';
import { sayOf } from '../../src/procedure/answer.ts';
import type { AnswerContext } from '../../src/procedure/answer-context.ts';
import { callsBetween } from '../../src/procedure/calls.ts';
import { whyOf } from '../../src/procedure/why.ts';
import type { ArcSeen, Guidance } from '../../src/track/guidance.ts';
import { flyArc } from './arc-flight.ts';
import type { ArcFlightPlan } from './arc-flight.ts';
import { AIRCRAFT, QEV, dated, guidance } from './ocean-legs.ts';
import { adviceWith } from './said-answer.ts';
import { FLAT_STATION, flatLeg } from './tracked-flight.ts';

const ARC_LEG: Leg = {
  station: QEV,
  direction: 'to',
  courseDeg: 145,
  altitudeFt: 4500,
  arc: { dmeNm: 12, toRadialDeg: 130, turn: 'clockwise' },
};

const ON_ARC: ArcSeen = {
  isJoining: false,
  turn: null,
  turnLeadNm: null,
  turnInS: null,
  outsideNm: 0.05,
  tangentDeg: 65,
  alongHeadingDeg: 75,
  toRadialDeg: 40,
  leadRadialsDeg: { inbound: 2.6, outbound: 2.4, plain: 2.5 },
};

const BEFORE_TURN: ArcSeen = {
  ...ON_ARC,
  isJoining: true,
  turn: 'left',
  turnLeadNm: 0.49,
  turnInS: 35,
  outsideNm: null,
  tangentDeg: 55,
  alongHeadingDeg: 48,
  toRadialDeg: null,
};

const HOLD_145 = {
  turn: 'none',
  turnDeg: 0,
  headingDeg: 145,
  holdS: 60,
  thenHeadingDeg: 145,
} as const;

const TWO_MINUTES = { toGoNm: 3.2, toGoS: 120, groundSpeedKt: 96, sdNm: 0.1, sdS: 6, sdKt: 3 };

function contextOf(changes: Partial<Guidance>, more: Partial<AnswerContext> = {}): AnswerContext {
  return {
    leg: dated(ARC_LEG),
    aircraft: AIRCRAFT,
    guidance: guidance({ howFar: { ...guidance().howFar, ...TWO_MINUTES }, ...changes }),
    alerts: [],
    readingCount: 5,
    flag: 'from',
    courseSetDeg: 350,
    question: null,
    isHeadingRead: true,
    manner: { decimalWord: 'decimal' },
    ...more,
  };
}

const say = (changes: Partial<Guidance>, more: Partial<AnswerContext> = {}): string =>
  sayOf(contextOf(changes, more));

const why = (changes: Partial<Guidance>, more: Partial<AnswerContext> = {}): string =>
  whyOf({ ...contextOf(changes, more), reading: null, lineHeadingDeg: 48 });

const INBOUND_AFTER: Leg = { station: QEV, direction: 'to', courseDeg: 310, altitudeFt: 4500 };

describe('the answer on an arc', () => {
  it('before the turn says how far it is to the turn', () => {
    expect(say({ whichWay: HOLD_145, arc: { ...BEFORE_TURN, turnInS: 190 } })).toMatch(
      /^Hold heading one four five\. Three decimal two miles to the turn, two minutes\. /,
    );
  });

  it('tells the turn with its time when it comes before the next reading', () => {
    const whichWay = { ...HOLD_145, holdS: 35, thenHeadingDeg: 48 };
    expect(say({ whichWay, arc: BEFORE_TURN })).toMatch(
      /^Hold heading one four five\. In three five seconds: join the one two mile arc\. Turn left, heading zero four eight\./,
    );
  });

  it('joins the arc: turn, heading, and the heading after it', () => {
    const whichWay = {
      turn: 'left',
      turnDeg: 90,
      headingDeg: 55,
      holdS: 58,
      thenHeadingDeg: 65,
    } as const;
    expect(say({ whichWay, arc: { ...BEFORE_TURN, turnInS: 0 } })).toMatch(
      /^Join the one two mile arc\. Turn left, heading zero five five\. Hold five eight seconds, then heading zero six five\./,
    );
  });

  it('on the arc says the way, and how long to the radial', () => {
    const whichWay = { ...HOLD_145, headingDeg: 75, holdS: 30, thenHeadingDeg: 85 };
    expect(say({ whichWay, arc: ON_ARC })).toMatch(
      /^Hold heading zero seven five, three zero seconds, then heading zero eight five\. One three zero radial in two minutes\./,
    );
  });

  it('says the distance to the radial where the time is not known, and nothing where neither is', () => {
    const far = { ...guidance().howFar, ...TWO_MINUTES, toGoS: null };
    expect(say({ howFar: far, arc: ON_ARC })).toContain(
      'One three zero radial in three decimal two miles.',
    );
    expect(say({ howFar: { ...far, toGoNm: null }, arc: ON_ARC })).not.toContain('radial');
  });

  it.each([
    [0.3, 'Three tenths of a mile outside the arc.'],
    [-0.5, 'Half a mile inside the arc.'],
  ])('says when it is %d NM off', (outsideNm, words) => {
    expect(say({ arc: { ...ON_ARC, outsideNm } })).toContain(words);
  });

  it('does not ask to set the course of the leg again: the OBS follows the radials', () => {
    expect(say({ arc: ON_ARC })).not.toContain('again');
    expect(say({ arc: { ...BEFORE_TURN, turnInS: 190 } })).toContain('Set course one four five');
  });

  it('names the arc with its decimal where it has one', () => {
    const leg = dated({ ...ARC_LEG, arc: { dmeNm: 12.5, toRadialDeg: 130, turn: 'clockwise' } });
    const whichWay = { ...HOLD_145, turn: 'left', turnDeg: 90, headingDeg: 55 } as const;
    const words = say({ whichWay, arc: { ...BEFORE_TURN, turnInS: 0 } }, { leg });
    expect(words).toContain('Join the one two decimal five mile arc.');
  });

  it('at the lead radial says the turn onto the next leg', () => {
    const arc = { ...ON_ARC, toRadialDeg: 2.5 };
    expect(say({ phase: 'arriving', arc }, { next: INBOUND_AFTER })).toMatch(
      /^Lead radial\. Turn right, inbound, heading three \w+ \w+\./,
    );
    const outbound: Leg = { ...INBOUND_AFTER, direction: 'from', courseDeg: 130 };
    expect(
      say({ phase: 'arriving', arc: { ...arc, toRadialDeg: 2.4 } }, { next: outbound }),
    ).toMatch(/^Lead radial\. Turn left, outbound, heading one \w+ \w+\./);
  });

  it('close to the radial asks once for the course of the leg that comes, unless it is set', () => {
    const howFar = { ...guidance().howFar, ...TWO_MINUTES, toGoNm: 1.9 };
    const near = { phase: 'arriving', howFar, arc: { ...ON_ARC, toRadialDeg: 9 } } as const;
    const next = INBOUND_AFTER;
    const asked = say(near, { next });
    expect(asked).toMatch(/One three zero radial in two minutes\. Set course three one zero\.$/);
    const previous = { ...adviceWith({}), say: asked };
    expect(say(near, { next, previous })).not.toContain('Set course');
    expect(say(near, { next, courseSetDeg: 310 })).not.toContain('Set course');
    const far = { ...near, howFar: { ...howFar, toGoNm: 4 } };
    expect(say(far, { next })).not.toContain('Set course');
    expect(say(near)).not.toContain('Set course');
  });

  it('where no leg follows says that the arc has ended', () => {
    const arc = { ...ON_ARC, toRadialDeg: 0 };
    expect(say({ phase: 'arriving', arc })).toContain('One three zero radial now. End of the arc.');
  });
});

describe('why, on an arc', () => {
  it('gives the rule for the lead and where the heading comes from', () => {
    expect(why({ whichWay: HOLD_145, arc: BEFORE_TURN })).toBe(
      'The turn begins half a mile before the arc: half a percent of the groundspeed, ' +
        'the radius of a standard rate turn. ' +
        'The arc begins zero five five, niner zero degrees from the radial. ' +
        'The wind is from the north, about one five knots, so the heading is zero four eight.',
    );
  });

  it('gives the place, the way of the arc and the wind', () => {
    const whichWay = { ...HOLD_145, headingDeg: 75, holdS: 30, thenHeadingDeg: 85 };
    expect(why({ whichWay, arc: { ...ON_ARC, outsideNm: 0.3 } })).toBe(
      'You are three tenths of a mile outside the arc. ' +
        'Abeam the station the arc runs zero six five. ' +
        'The wind is from the north, about one five knots, ' +
        'so zero seven five brings you back to it, and zero eight five follows it round.',
    );
  });

  it('gives the sixty-to-one rule at the lead radial', () => {
    expect(why({ arc: { ...ON_ARC, toRadialDeg: 2 } })).toContain(
      'Sixty divided by the D M E is the number of radials in a mile, so the turn takes three radials',
    );
  });
});

const FLAT_ARC: ArcFlightPlan = {
  arc: { dmeNm: 12, toRadialDeg: 30, turn: 'clockwise' },
  direction: 'to',
  courseDeg: 145,
  startNm: 17.5,
  airspeedKt: 95,
  windFromDeg: 250,
  windKt: 15,
  everyS: 60,
  seed: null,
};

/** All call-outs of a flight, in order, each once. */
function callsOf(next?: Leg): string[] {
  const leg = flatLeg({ ...ARC_LEG, station: FLAT_STATION, arc: FLAT_ARC.arc });
  const manner = { decimalWord: 'decimal' } as const;
  const said = new Set<string>();
  return flyArc(FLAT_ARC).estimates.flatMap((estimate) => {
    const answeredAtMs = estimate.readings.at(-1)?.atMs ?? 0;
    const advice = adviceOf(estimate, leg, AIRCRAFT, { identConfirmed: null, manner });
    const context = {
      leg,
      legIndex: 0,
      isLastLeg: next === undefined,
      estimate,
      advice,
      answeredAtMs,
      manner,
      ...(next === undefined ? {} : { next }),
    };
    const words: string[] = [];
    for (let atMs = answeredAtMs; atMs < answeredAtMs + 60_000; atMs += 1000) {
      for (const call of callsBetween(context, atMs, atMs + 1000, said)) {
        said.add(call.key);
        words.push(call.say);
      }
    }
    return words;
  });
}

describe('the call-outs of an arc', () => {
  const next: Leg = { station: FLAT_STATION, direction: 'to', courseDeg: 210, altitudeFt: 4500 };
  const calls = callsOf(next);
  const once = (part: string): string[] => calls.filter((each) => each.includes(part));

  it('call the mile before the turn, then the turn, then the radial, then the lead radial', () => {
    const places = [
      'One mile to the turn.',
      'Join the one two mile arc.',
      'in two miles',
      'Lead radial.',
    ].map((part) => calls.findIndex((each) => each.includes(part)));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((one, other) => one - other));
    expect(once('Join the')).toHaveLength(1);
    expect(once('Lead radial')).toHaveLength(1);
  });

  it('give the heading of the turn onto the arc, and of the turn off it with its side', () => {
    expect(once('Join the')[0]).toMatch(/Turn left, heading zero \w+ \w+\.$/);
    expect(once('Lead radial')[0]).toMatch(
      /^Lead radial\. Turn right, inbound, heading two \w+ \w+\.$/,
    );
  });

  it('ask for the course of the leg that comes two miles before the radial, not in the turn', () => {
    expect(once('in two miles')).toEqual([
      'Zero three zero radial in two miles. Set course two one zero.',
    ]);
    expect(callsOf().filter((each) => each.includes('Set course'))).toEqual([]);
  });

  it('ask for the distance only, or for the radial', () => {
    expect(once('Distance, please.').length).toBeGreaterThan(0);
    expect(once('Centre the needle with FROM').length).toBeGreaterThan(0);
  });

  it('name the radial itself where no leg follows', () => {
    expect(callsOf()).toContain('Zero three zero radial now. End of the arc.');
  });
});
