import type { Advice } from '../../src/procedure/advice.ts';
import { QUESTION_WORDS, asksForTurn } from '../../src/procedure/phrases.ts';
import type { Alert } from '../../src/track/guidance.ts';
import { guide } from '../../src/track/guide.ts';
import { nowMs } from './clock.ts';
import { isHeadingRead, type Deck } from './deck.ts';
import { turnBetween } from './figures.ts';
import { isAtEnd, standingAnswer, type StandingAnswer } from './standing-answer.ts';

/** The line above the heading: what to do now, or the one check to make. */
export interface TurnLine {
  /** `act`: must be acted on now. `ask`: a check or a reading is wanted. `steady`: nothing to do. */
  readonly kind: 'act' | 'ask' | 'steady';
  readonly text: string;
  readonly turn: 'left' | 'right' | 'none';
}

/** The answer as it stands at this moment: the second heading counts once the first has been held. */
export interface AnswerNow extends StandingAnswer {
  readonly advice: Advice;
  readonly line: TurnLine;
  /** The turn itself, where an alert has taken its line. */
  readonly turnBelow: string | null;
  readonly thenHeadingDeg: number;
  readonly ageS: number;
  /** The turn off an arc has been called: the heading that stands is no longer the one to fly. */
  readonly isLeaving: boolean;
  /** The end of the last leg is reached: nothing is left but to finish. */
  readonly isThere: boolean;
}

const TURN_STAYS_S = 20;
const STALE_LINE: TurnLine = { kind: 'ask', text: 'Old answer: read the panel', turn: 'none' };

/** Works out what the page shows now; null before the first answer of the leg. */
export function answerNow(deck: Deck): AnswerNow | null {
  const advice = deck.state.value.advice;
  const last = deck.last.value;
  if (advice === null || last === null) return null;
  const ageS = Math.max(0, (nowMs.value - answeredAtMs(deck, last.atMs)) / 1000);
  const standing = standingAnswer(advice, ageS);
  const turnLine = standing.isSecond
    ? secondTurn(advice, ageS)
    : firstTurn(advice, isHeadingRead(deck), last.reading.flag === 'off');
  const isThere = isAtEnd(deck.state.value);
  const isStale = standing.isStale && !isThere;
  const askLine = isStale ? STALE_LINE : askLineOf(deck, advice);
  const leaving = leavingLine(deck);
  return {
    ...standing,
    advice,
    line: askLine ?? leaving ?? turnLine,
    turnBelow: askLine === null || isStale || turnLine.turn === 'none' ? null : turnLine.text,
    thenHeadingDeg: advice.whichWay.thenHeadingDeg,
    ageS,
    isStale,
    isLeaving: leaving !== null,
    isThere,
  };
}

/** After the lead radial was called, until the next leg is begun. */
function leavingLine(deck: Deck): TurnLine | null {
  const { plan, legIndex } = deck.state.value;
  const isCalled = deck.lastCall.value?.isLeadRadial === true;
  if (!isCalled || plan?.legs[legIndex + 1] === undefined) return null;
  return { kind: 'act', text: `Lead radial: turn, begin leg ${legIndex + 2}`, turn: 'none' };
}

/** A leg that was begun between two readings has its answer from then. */
function answeredAtMs(deck: Deck, readAtMs: number): number {
  const { legs, legIndex } = deck.state.value;
  return Math.max(readAtMs, legs[legIndex]?.startedAtMs ?? 0);
}

/** An alert, or a question that must come first, takes the place of the turn. */
function askLineOf(deck: Deck, advice: Advice): TurnLine | null {
  const alert = alertToShow(advice);
  if (alert !== null) return { kind: 'act', text: alert.ask, turn: 'none' };
  const question = questionOf(deck);
  return question === null ? null : { kind: 'ask', text: question, turn: 'none' };
}

function firstTurn(advice: Advice, isKnown: boolean, isOff: boolean): TurnLine {
  const way = advice.whichWay;
  // The passage itself is the flag's turn to FROM: with OFF still in view the voice says the same.
  const where = isOff ? 'Over the station' : 'Station passage';
  if (!isKnown) return { kind: 'steady', text: 'Fly this heading', turn: 'none' };
  if (advice.phase === 'near-station') {
    return { kind: 'steady', text: 'Near the station: ignore the needle', turn: 'none' };
  }
  if (!asksForTurn(way) || way.turn === 'none') {
    const steady = advice.phase === 'passage' ? `${where}: hold this heading` : 'Hold this heading';
    return { kind: 'steady', text: steady, turn: 'none' };
  }
  const passage = advice.phase === 'passage' ? `${where}: turn` : 'Turn';
  return {
    kind: 'act',
    text: `${passage} ${way.turn} ${Math.round(way.turnDeg)}`,
    turn: way.turn,
  };
}

function secondTurn({ whichWay }: Advice, ageS: number): TurnLine {
  const { turn, turnDeg } = turnBetween(whichWay.headingDeg, whichWay.thenHeadingDeg);
  if (turn === 'none' || ageS > whichWay.holdS + TURN_STAYS_S) {
    return { kind: 'steady', text: 'Hold this heading', turn: 'none' };
  }
  return { kind: 'act', text: `Now turn ${turn} ${turnDeg}`, turn };
}

/** The ident has a place of its own in the header; any other alert takes the turn line. */
function alertToShow(advice: Advice): Alert | null {
  return advice.alerts.find((alert) => alert.kind !== 'ident-not-confirmed') ?? null;
}

/** With too little to go on: the reading that is needed most. */
function questionOf(deck: Deck): string | null {
  const { estimate, advice } = deck.state.value;
  if (estimate === null || advice === null) return null;
  const isVague = advice.phase === 'lost' || advice.estimate.crossTrackNm === null;
  const question = isVague ? guide(estimate, estimate.leg).nextQuestion : null;
  return question === null ? null : QUESTION_WORDS[question];
}
