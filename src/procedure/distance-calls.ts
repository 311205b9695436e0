import { MS_PER_S, S_PER_H } from '../base/units.ts';
import { spokenDistance } from '../speech/numbers.ts';
import { coneRadiusNm } from '../station/cone.ts';
import { foresee } from '../track/foresee.ts';
import { arcMarks } from './arc-calls.ts';
import { callAt, endsOverStation } from './call.ts';
import type { Call, CallContext, Mark } from './call.ts';
import { dmeAtEndNm } from './dme-at-end.ts';
import { lineHeadingToFlyDeg } from './line-heading.ts';
import { headingWords, milesWords } from './phrases.ts';

/** The cone is announced this far before its edge, NM: about 20 s at 90 kt. */
const CONE_LEAD_NM = 0.5;

/** Whole-mile calls nearer than this to the call of the cone are left to it, NM (two sentences collide). */
const CONE_ROOM_NM = 0.5;

/** So soon after an answer the miles to a station that it told need no call, ms. */
const JUST_TOLD_MS = 15_000;

/** The call-outs at a distance from the end of the leg; null for one without a known time. */
export function distanceCalls(context: CallContext, toMs: number): readonly (Call | null)[] {
  return marksOf(context).map((mark) => {
    const atMs = momentAt(context, mark.toGoNm, toMs);
    return atMs === null || isJustTold(context, mark, atMs)
      ? null
      : callAt(mark.key, atMs, mark.urgency, mark.say);
  });
}

/**
 * What the answer has just said is not said again. The miles before an end known by its DME always are: the
 * answer does not tell what the DME will read there.
 */
function isJustTold(context: CallContext, { key, urgency }: Mark, atMs: number): boolean {
  if (key.startsWith('cone:')) return context.advice.phase === 'near-station';
  const isToldWhole = context.leg.leg.arc !== undefined || endsOverStation(context);
  return urgency === 'soon' && isToldWhole && atMs - context.answeredAtMs < JUST_TOLD_MS;
}

function marksOf(context: CallContext): readonly Mark[] {
  const { leg, legIndex } = context;
  if (leg.leg.arc) return arcMarks(context, leg.leg.arc);
  const isOverStation = endsOverStation(context);
  const cone = isOverStation ? coneMark(context) : null;
  const miles = [2, 1]
    .filter((toGoNm) => cone === null || toGoNm > cone.toGoNm + CONE_ROOM_NM)
    .map((toGoNm): Mark => ({
      key: `to-go:${legIndex}:${toGoNm}`,
      toGoNm,
      urgency: 'soon',
      say: `${toGoNm === 1 ? 'One mile' : 'Two miles'} to go.${dmeWords(context, toGoNm)}`,
    }));
  // In the cone the answer has already asked for the FROM that ends the leg.
  const isOverhead = isOverStation && context.advice.phase === 'passage';
  const end = isOverhead ? [] : [endMark(context, isOverStation)];
  return [...(cone === null ? [] : [cone]), ...miles, ...end];
}

/** Into the cone goes the heading that keeps the line, whatever leads back to it now. */
function coneMark({ leg, legIndex, advice, estimate, manner }: CallContext): Mark {
  const toGoNm = coneRadiusNm(leg.heightAboveVorFt) + CONE_LEAD_NM;
  const heading = headingWords(lineHeadingToFlyDeg(estimate, advice.whichWay.thenHeadingDeg));
  return {
    key: `cone:${legIndex}`,
    toGoNm,
    urgency: 'soon',
    say: `Station in ${milesWords(toGoNm, manner)}. Hold ${heading}, ignore the needle.`,
  };
}

function endMark(context: CallContext, isOverStation: boolean): Mark {
  const key = `to-go:${context.legIndex}:0`;
  if (isOverStation) {
    return {
      key,
      toGoNm: 0,
      urgency: 'now',
      say: 'Station about now. Say when the flag shows FROM.',
    };
  }
  const what = context.isLastLeg ? 'Destination now.' : 'End of the leg now.';
  return { key, toGoNm: 0, urgency: 'now', say: `${what}${dmeWords(context, 0)}` };
}

/** " D M E one two decimal one.", or nothing without DME. */
function dmeWords({ leg, manner }: CallContext, toGoNm: number): string {
  const dmeNm = dmeAtEndNm(leg, toGoNm);
  return dmeNm === null ? '' : ` D M E ${spokenDistance(dmeNm, manner)}.`;
}

/** Beyond this nothing is looked for, s: the next reading will have come before. */
const HORIZON_S = 1800;

/**
 * When so much is left to go; null when the speed or the distance is unknown, when it was passed before the
 * last reading, or when it lies well beyond `toMs`. One step of the straight line, put right by foresight.
 */
function momentAt(context: CallContext, toGoNm: number, toMs: number): number | null {
  const { estimate, leg, advice, answeredAtMs } = context;
  const speedKt = advice.howFar.groundSpeedKt;
  const leftNm = (advice.howFar.toGoNm ?? NaN) - toGoNm;
  if (speedKt === null || !(speedKt > 0) || !(leftNm > 0)) return null;
  const firstS = (leftNm / speedKt) * S_PER_H;
  const firstMs = answeredAtMs + firstS * MS_PER_S;
  if (firstS > HORIZON_S || firstMs > toMs + firstS * MS_PER_S * 0.5 + 60_000) return null;
  const then = foresee(estimate, leg, firstMs).howFar;
  if (then.toGoNm === null) return firstMs;
  const missNm = then.toGoNm - toGoNm;
  const laterMs = firstMs + (missNm / speedKt) * S_PER_H * MS_PER_S;
  return Math.abs(missNm) < leftNm / 2 ? laterMs : firstMs;
}
