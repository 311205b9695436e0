import { describe, expect, it } from 'vitest';
import { isAtEnd, standingAnswer } from '../../client/parts/standing-answer.ts';
import { foldFlight } from '../../src/flight/fold.ts';
import type { Advice } from '../../src/procedure/advice.ts';
import { PLAN, readingAt } from './ocean-flight.ts';
import { OUTBOUND } from './ocean-legs.ts';

const given = foldFlight([PLAN, readingAt('B1', 60, { needleDots: -1.5, dmeNm: 11.2 })]).advice;
if (given === null) throw new Error('no answer');
const advice: Advice = {
  ...given,
  nextReadingInS: 90,
  whichWay: { turn: 'left', turnDeg: 15, headingDeg: 97, holdS: 75, thenHeadingDeg: 108 },
};

describe('an answer that stands', () => {
  it('has its first heading until it has been held as long as was said, then the second', () => {
    expect(standingAnswer(advice, 74)).toMatchObject({ headingDeg: 97, holdLeftS: 1 });
    expect(standingAnswer(advice, 75)).toMatchObject({ headingDeg: 108, holdLeftS: null });
  });

  it('is an old one once the next reading is two minutes overdue', () => {
    expect(standingAnswer(advice, 90 + 119).isStale).toBe(false);
    expect(standingAnswer(advice, 90 + 121).isStale).toBe(true);
  });
});

describe('the end of the last leg', () => {
  const plan = { ...PLAN, legs: [OUTBOUND] };
  const state = foldFlight([plan, readingAt('B1', 60, { needleDots: 0, dmeNm: 13 })]);
  const near = (toGoNm: number | null, phase: Advice['phase']) => ({
    ...state,
    advice: { ...advice, phase, howFar: { ...advice.howFar, toGoNm } },
  });

  it('is reached with nothing to go', () => {
    expect(isAtEnd(near(0, 'arriving'))).toBe(true);
    expect(isAtEnd(near(1.1, 'arriving'))).toBe(false);
    expect(isAtEnd(near(0, 'passage'))).toBe(true);
  });

  it('is not reached where the distance is not known', () => {
    expect(isAtEnd(near(null, 'arriving'))).toBe(false);
  });

  it('is not the end of a leg before the last', () => {
    expect(isAtEnd({ ...near(0, 'passage'), plan: { ...PLAN }, legIndex: 0 })).toBe(false);
  });
});
