import { digits, spokenBearing, spokenDistance, spokenDuration } from '../speech/numbers.ts';
import type { Manner } from '../speech/numbers.ts';
import type { DmeArc } from '../leg/leg.ts';
import type { ArcSeen, Guidance } from '../track/guidance.ts';
import type { AnswerContext } from './answer-context.ts';
import { exitLeadDeg, exitWords, nextCourseWords } from './arc-exit.ts';
import { asksForTurn, hasSecondHeading, headingWords, milesWords } from './phrases.ts';
import { offCourseWords, wayWords } from './phrases.ts';

/** Turned by more than this the aircraft is still on its radial: this is the turn onto the arc, degrees. */
const JOINING_TURN_DEG = 45;
/** So far before the radial the OBS is set to the course that comes, NM; the call-out comes then as well. */
export const OBS_WITHIN_NM = 2;
/** An answer so shortly before that call takes its place, NM. */
const CALL_ROOM_NM = 0.5;
/** Off the arc by more than this is worth saying, NM. */
const WORTH_SAYING_NM = 0.25;

/** "one two mile arc"; 12.5 DME: "one two decimal five mile arc". */
function arcName({ dmeNm }: DmeArc, manner: Manner): string {
  const miles = Number.isInteger(dmeNm) ? digits(dmeNm) : spokenDistance(dmeNm, manner);
  return `${miles} mile arc`;
}

/** "One three zero radial in two minutes." */
export function radialWords({ toRadialDeg }: DmeArc, when: string): string {
  const radial = spokenBearing(toRadialDeg);
  return `${radial.charAt(0).toUpperCase()}${radial.slice(1)} radial ${when}.`;
}

/** "Join the one two mile arc. Turn left, heading zero five five." */
export function joinWords(arc: DmeArc, turn: string, headingDeg: number, manner: Manner): string {
  return `Join the ${arcName(arc, manner)}. Turn ${turn}, ${headingWords(headingDeg)}.`;
}

/** What is said of the way and the distance on a leg that is an arc; the wind comes after it. */
export function arcWords(context: AnswerContext, arc: DmeArc, seen: ArcSeen): readonly string[] {
  const { guidance, manner } = context;
  if (isTurningOn(guidance, seen)) return turnOntoWords(context, arc);
  if (!seen.isJoining) return onArcWords(context, arc, seen);
  const { whichWay, howFar } = guidance;
  if (seen.turnInS !== null && seen.turn !== null && hasSecondHeading(whichWay)) {
    if (Math.abs(whichWay.holdS - seen.turnInS) < 2) {
      const alone = wayWords({ ...whichWay, thenHeadingDeg: whichWay.headingDeg });
      return [
        alone,
        `In ${spokenDuration(whichWay.holdS)}: ${lowered(joinWords(arc, seen.turn, whichWay.thenHeadingDeg, manner))}`,
      ];
    }
  }
  return [wayWords(whichWay), ...toTurnWords(howFar, manner)];
}

/** The turn from the radial onto the arc is to be made now. */
function isTurningOn({ whichWay }: Guidance, { isJoining, turnInS }: ArcSeen): boolean {
  if (isJoining) return turnInS !== null && turnInS <= 0 && asksForTurn(whichWay);
  return whichWay.turnDeg > JOINING_TURN_DEG;
}

function turnOntoWords({ guidance, manner }: AnswerContext, arc: DmeArc): readonly string[] {
  const { whichWay } = guidance;
  const join = joinWords(arc, whichWay.turn, whichWay.headingDeg, manner);
  if (!hasSecondHeading(whichWay)) return [join];
  const then = headingWords(whichWay.thenHeadingDeg);
  return [join, `Hold ${spokenDuration(whichWay.holdS)}, then ${then}.`];
}

function toTurnWords({ toGoNm, toGoS }: Guidance['howFar'], manner: Manner): readonly string[] {
  if (toGoNm === null) return ['I cannot tell the distance yet.'];
  const miles = `${capital(milesWords(toGoNm, manner))} to the turn`;
  return [toGoS === null ? `${miles}.` : `${miles}, ${spokenDuration(toGoS)}.`];
}

function onArcWords(context: AnswerContext, arc: DmeArc, seen: ArcSeen): readonly string[] {
  const { guidance, manner, leg, next, aircraft } = context;
  const way = wayWords(guidance.whichWay);
  const leaving = { leg, aircraft, wind: guidance.seen.wind, ...(next ? { next } : {}) };
  if (seen.toRadialDeg !== null && seen.toRadialDeg <= exitLeadDeg(seen, leaving)) {
    // The way along the arc is not said any more: it would be heard as the heading to turn to.
    return next ? [exitWords(leaving)] : [radialWords(arc, 'now'), exitWords(leaving), way];
  }
  const off = seen.outsideNm ?? 0;
  const side = off > 0 ? 'outside' : 'inside';
  const offWords = `${capital(offCourseWords(off, manner))} ${side} the arc.`;
  return [
    way,
    ...(Math.abs(off) >= WORTH_SAYING_NM ? [offWords] : []),
    ...radialAhead(guidance.howFar, arc, manner),
    ...obsWords(context, leaving),
  ];
}

/** Once the radial is near: there is no hand free for the OBS in the turn. */
function obsWords(
  { guidance, courseSetDeg, previous }: AnswerContext,
  leaving: Parameters<typeof nextCourseWords>[0],
): readonly string[] {
  if ((guidance.howFar.toGoNm ?? Infinity) > OBS_WITHIN_NM + CALL_ROOM_NM) return [];
  const words = nextCourseWords(leaving, courseSetDeg);
  return words === null || previous?.say.includes(words) === true ? [] : [words];
}

function radialAhead(
  { toGoNm, toGoS }: Guidance['howFar'],
  arc: DmeArc,
  manner: Manner,
): readonly string[] {
  if (toGoS !== null) return [radialWords(arc, `in ${spokenDuration(toGoS)}`)];
  return toGoNm === null ? [] : [radialWords(arc, `in ${milesWords(toGoNm, manner)}`)];
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

function lowered(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}
