import type { Advice } from '../../src/procedure/advice.ts';
import { QUESTION_WORDS, asksForTurn, hasSecondHeading } from '../../src/procedure/phrases.ts';
import type { Alert } from '../../src/track/guidance.ts';
import { guide } from '../../src/track/guide.ts';
import { nowMs } from './clock.ts';
import type { Deck } from './deck.ts';
import { turnBetween } from './figures.ts';

/** The line above the heading: what to do now, or the one check to make. */
export interface TurnLine {
  /** `act`: must be acted on now. `ask`: a check or a reading is wanted. `steady`: nothing to do. */
  readonly kind: 'act' | 'ask' | 'steady';
  readonly text: string;
  readonly turn: 'left' | 'right' | 'none';
}

/** The answer as it stands at this moment: the second heading counts once the first has been held. */
export interface AnswerNow {
  readonly advice: Advice;
  readonly line: TurnLine;
  readonly headingDeg: number;
  /** The turn itself, where an alert has taken its line. */
  readonly turnBelow: string | null;
  /** Seconds for which the heading is still to be held; null: until the next reading. */
  readonly holdLeftS: number | null;
  readonly holdShare: number;
  readonly thenHeadingDeg: number;
  readonly ageS: number;
  readonly nextReadingInS: number;
  /** So long without the reading that was due that the heading may be wrong by now. */
  readonly isStale: boolean;
  /** The end of the last leg is reached: nothing is left but to finish. */
  readonly isThere: boolean;
}

const TURN_STAYS_S = 20;
/** A reading this long overdue makes the answer an old one; common practice, no source. */
const STALE_S = 120;
/** Nearer than this to the end of the last leg the flight is over, NM. */
const THERE_NM = 0.2;
const STALE_LINE: TurnLine = { kind: 'ask', text: 'Old answer: read the panel', turn: 'none' };

/** Works out what the page shows now; null before the first answer of the leg. */
export function answerNow(deck: Deck): AnswerNow | null {
  const advice = deck.state.value.advice;
  const last = deck.last.value;
  if (advice === null || last === null) return null;
  const way = advice.whichWay;
  const ageS = Math.max(0, (nowMs.value - answeredAtMs(deck, last.atMs)) / 1000);
  const isSecond = hasSecondHeading(way) && ageS >= way.holdS;
  const turnLine = isSecond ? secondTurn(advice, ageS) : firstTurn(advice, isHeadingKnown(deck));
  const nextReadingInS = advice.nextReadingInS - ageS;
  const isThere = isAtEnd(deck, advice);
  const isStale = !isThere && nextReadingInS < -STALE_S;
  const askLine = isStale ? STALE_LINE : askLineOf(deck, advice);
  return {
    advice,
    line: askLine ?? turnLine,
    headingDeg: isSecond ? way.thenHeadingDeg : way.headingDeg,
    turnBelow: askLine === null || isStale || turnLine.turn === 'none' ? null : turnLine.text,
    holdLeftS: hasSecondHeading(way) && !isSecond && !isStale ? way.holdS - ageS : null,
    holdShare: way.holdS > 0 ? Math.min(1, ageS / way.holdS) : 1,
    thenHeadingDeg: way.thenHeadingDeg,
    ageS,
    nextReadingInS,
    isStale,
    isThere,
  };
}

/** Whether a reading has shown the end of the last leg: nothing is left to fly by it. */
function isAtEnd(deck: Deck, { phase, howFar }: Advice): boolean {
  const { plan, legIndex } = deck.state.value;
  const isLast = plan !== null && legIndex === plan.legs.length - 1;
  const isEnding = phase === 'arriving' || phase === 'passage';
  return isLast && isEnding && howFar.toGoNm !== null && howFar.toGoNm < THERE_NM;
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

/** Whether a heading has ever been read: until then nobody knows whether there is a turn to make. */
function isHeadingKnown(deck: Deck): boolean {
  return deck.state.value.readings.some(({ reading }) => reading.headingDeg !== undefined);
}

function firstTurn(advice: Advice, isKnown: boolean): TurnLine {
  const way = advice.whichWay;
  if (!isKnown) return { kind: 'steady', text: 'Fly this heading', turn: 'none' };
  if (advice.phase === 'near-station') {
    return { kind: 'steady', text: 'Near the station: ignore the needle', turn: 'none' };
  }
  if (!asksForTurn(way) || way.turn === 'none') {
    const steady =
      advice.phase === 'passage' ? 'Station passage: hold this heading' : 'Hold this heading';
    return { kind: 'steady', text: steady, turn: 'none' };
  }
  const passage = advice.phase === 'passage' ? 'Station passage: turn' : 'Turn';
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
