import type { DmeArc } from '../leg/leg.ts';
import { S_PER_H } from '../base/units.ts';
import { guide } from '../track/guide.ts';
import type { ArcSeen } from '../track/guidance.ts';
import { OBS_WITHIN_NM, joinWords, radialWords } from './arc-answer.ts';
import { exitLeadDeg, exitWords, nextCourseWords } from './arc-exit.ts';
import type { CallContext, Mark } from './call.ts';
import { hasSecondHeading } from './phrases.ts';

/** From being told to turning, seconds. */
const REACTION_S = 5;
/** The standing answer's second heading is the turn onto the arc if it comes this near to it, seconds. */
const SAME_MOMENT_S = 2;

/** What is called on the way to an arc and about it. */
export function arcMarks(context: CallContext, arc: DmeArc): readonly Mark[] {
  const seen = guide(context.estimate, context.leg).arc;
  if (seen === undefined) return [];
  return seen.isJoining ? turnMarks(context, arc, seen) : radialMarks(context, arc, seen);
}

/** A mile before the turn, and the turn itself where the answer has not told it with its time. */
function turnMarks(context: CallContext, arc: DmeArc, seen: ArcSeen): readonly Mark[] {
  const { legIndex, advice, manner } = context;
  const key = (what: string): string => `arc-turn:${legIndex}:${what}`;
  const mile: Mark = {
    key: key('1'),
    toGoNm: 1,
    urgency: 'soon',
    say: 'One mile to the turn.',
  };
  if (seen.turn === null || isTurnTold(context, seen)) return [mile];
  const toldNm = ((advice.howFar.groundSpeedKt ?? 0) * REACTION_S) / S_PER_H;
  const say = joinWords(arc, seen.turn, seen.alongHeadingDeg, manner);
  return [mile, { key: key('0'), toGoNm: toldNm, urgency: 'now', say }];
}

function isTurnTold({ advice }: CallContext, { turnInS }: ArcSeen): boolean {
  const { whichWay } = advice;
  if (turnInS === null || !hasSecondHeading(whichWay)) return false;
  return Math.abs(whichWay.holdS - turnInS) < SAME_MOMENT_S;
}

/** Two miles before the radial, the lead radial, and the radial itself where no leg follows. */
function radialMarks(context: CallContext, arc: DmeArc, seen: ArcSeen): readonly Mark[] {
  const { leg, legIndex, next, estimate, advice } = context;
  const key = (what: string): string => `arc-radial:${legIndex}:${what}`;
  const leaving = {
    leg,
    aircraft: estimate.aircraft,
    wind: advice.estimate.wind,
    ...(next === undefined ? {} : { next }),
  };
  const leadDeg = next === undefined ? 0 : exitLeadDeg(seen, leaving);
  const nmPerDeg =
    seen.toRadialDeg !== null && seen.toRadialDeg > 0
      ? (advice.howFar.toGoNm ?? 0) / seen.toRadialDeg
      : 0;
  const course = nextCourseWords(leaving, estimate.readings.at(-1)?.courseSetDeg ?? null);
  const isTold = course !== null && advice.say.includes(course);
  const obs = course === null || isTold ? '' : ` ${course}`;
  const end = next === undefined ? `${radialWords(arc, 'now')} ` : '';
  return [
    {
      key: key('2'),
      toGoNm: OBS_WITHIN_NM,
      urgency: 'soon',
      say: `${radialWords(arc, 'in two miles')}${obs}`,
    },
    {
      key: key('0'),
      toGoNm: leadDeg * nmPerDeg,
      urgency: 'now',
      say: `${end}${exitWords(leaving)}`,
    },
  ];
}

/** What is said when the first heading has been held long enough and the turn onto the arc comes; else null. */
export function joinCallWords(context: CallContext): string | null {
  const { leg, estimate, advice, manner } = context;
  const { arc } = leg.leg;
  const seen = arc && guide(estimate, leg).arc;
  if (!arc || !seen?.isJoining || seen.turn === null || !isTurnTold(context, seen)) return null;
  return joinWords(arc, seen.turn, advice.whichWay.thenHeadingDeg, manner);
}
