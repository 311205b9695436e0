import { sayOf } from '../../src/procedure/answer.ts';
import type { AnswerContext } from '../../src/procedure/answer-context.ts';
import type { Advice } from '../../src/procedure/advice.ts';
import type { Guidance } from '../../src/track/guidance.ts';
import { AIRCRAFT, INBOUND, dated, guidance } from './ocean-legs.ts';

const DECIMAL = { decimalWord: 'decimal' } as const;

/** What is said of an ordinary moment inbound, as the changes alter it. */
export function say(changes: Partial<Guidance> = {}, more: Partial<AnswerContext> = {}): string {
  return sayOf({
    leg: dated(INBOUND),
    aircraft: AIRCRAFT,
    guidance: guidance(changes),
    alerts: [],
    readingCount: 3,
    flag: 'to',
    courseSetDeg: 112,
    question: null,
    isHeadingRead: true,
    manner: DECIMAL,
    ...more,
  });
}

export const STILL = {
  turn: 'none',
  turnDeg: 0,
  headingDeg: 112,
  holdS: 90,
  thenHeadingDeg: 112,
} as const;
export const NOTHING_FAR = {
  toGoNm: null,
  pastEndNm: null,
  toGoS: null,
  groundSpeedKt: null,
  sdNm: null,
  sdS: null,
  sdKt: null,
} as const;
export const NO_WIND = {
  crossTrackNm: 0.1,
  crossTrackSdNm: 0.1,
  driftDeg: null,
  wind: null,
} as const;

/** The answer before, with that guidance. */
export function adviceWith(changes: Partial<Guidance>): Advice {
  const { phase, howFar, whichWay, seen, nextReadingInS } = guidance(changes);
  const words = { alerts: [], say: '', why: '' };
  return { phase, howFar, whichWay, estimate: seen, nextReadingInS, ...words };
}
