import { MS_PER_S, S_PER_H } from '../base/units.ts';
import { spokenDistance } from '../speech/numbers.ts';
import { coneRadiusNm } from '../station/cone.ts';
import { foresee } from '../track/foresee.ts';
import { guide } from '../track/guide.ts';
import type { Call, CallContext, Mark } from './call.ts';
import { arcMarks, joinCallWords } from './arc-calls.ts';
import { dmeAtEndNm } from './dme-at-end.ts';
import { worthAsking } from './question.ts';
import { QUESTION_WORDS, hasSecondHeading, headingWords, milesWords } from './phrases.ts';

/** How long a call-out stays true enough to be said, ms. */
const GOOD_FOR_MS = { now: 12_000, soon: 15_000, routine: 30_000 } as const;

/** The cone is announced this far before its edge, NM: about 20 s at 90 kt. */
const CONE_LEAD_NM = 0.5;

/** Whole-mile calls nearer than this to the call of the cone are left to it, NM (two sentences collide). */
const CONE_ROOM_NM = 0.5;

const NO_KEYS: ReadonlySet<string> = new Set();

/**
 * The call-outs that fall due after `fromMs` and not after `toMs`, in time order.
 *
 * Asked in steps, each is given once; one that has gone stale by `toMs` (the device slept) is dropped.
 * With `said`, the keys already spoken, a call that a new estimate moved into the past is still given
 * while it is true, and none is given twice. A call without a known time is not made: nothing is invented.
 */
export function callsBetween(
  context: CallContext,
  fromMs: number,
  toMs: number,
  said: ReadonlySet<string> = NO_KEYS,
): readonly Call[] {
  return callsAhead(context, toMs)
    .filter((call) => call.atMs <= toMs && call.untilMs >= toMs && !said.has(call.key))
    .filter((call) => call.atMs > fromMs || said !== NO_KEYS)
    .sort((one, other) => one.atMs - other.atMs);
}

function callsAhead(context: CallContext, toMs: number): readonly Call[] {
  return [holdCall(context), ...distanceCalls(context, toMs), readingCall(context, toMs)].filter(
    (each) => each !== null,
  );
}

function call(key: string, atMs: number, urgency: Call['urgency'], say: string): Call {
  return { key, atMs, untilMs: atMs + GOOD_FOR_MS[urgency], say, urgency };
}

/** "Now heading one zero eight." when the first heading has been held long enough. */
function holdCall(context: CallContext): Call | null {
  const { advice, answeredAtMs } = context;
  const way = advice.whichWay;
  if (!hasSecondHeading(way)) return null;
  const atMs = answeredAtMs + way.holdS * MS_PER_S;
  const say = joinCallWords(context) ?? `Now ${headingWords(way.thenHeadingDeg)}.`;
  return call(`hold:${answeredAtMs}`, atMs, 'now', say);
}

/** "Needle, flag and distance, please." when the next reading is worth most. */
function readingCall(context: CallContext, toMs: number): Call | null {
  const { advice, answeredAtMs, estimate, leg } = context;
  const atMs = answeredAtMs + advice.nextReadingInS * MS_PER_S;
  if (atMs > toMs) return null;
  const question = worthAsking(estimate, guide(estimate, leg));
  const usual = leg.leg.station.hasDme
    ? 'Needle, flag and distance, please.'
    : 'Needle and flag, please.';
  const asked = guide(estimate, leg).arc?.isJoining === false ? 'Distance, please.' : usual;
  const say = question === null ? asked : QUESTION_WORDS[question];
  return call(`reading:${answeredAtMs}`, atMs, 'routine', say);
}

function distanceCalls(context: CallContext, toMs: number): readonly (Call | null)[] {
  return marksOf(context).map((mark) => {
    const atMs = momentAt(context, mark.toGoNm, toMs);
    return atMs === null ? null : call(mark.key, atMs, mark.urgency, mark.say);
  });
}

function marksOf(context: CallContext): readonly Mark[] {
  const { leg, legIndex } = context;
  if (leg.leg.arc) return arcMarks(context, leg.leg.arc);
  const isOverStation = leg.leg.direction === 'to' && leg.endGroundNm === 0;
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

function coneMark({ leg, legIndex, advice, manner }: CallContext): Mark {
  const toGoNm = coneRadiusNm(leg.heightAboveVorFt) + CONE_LEAD_NM;
  const heading = headingWords(advice.whichWay.thenHeadingDeg);
  return {
    key: `cone:${legIndex}`,
    toGoNm,
    urgency: 'soon',
    say: `Station in ${milesWords(toGoNm, manner)}. The needle will swing: hold ${heading} and ignore it.`,
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

/** " D M E will read one two decimal one.", or nothing without DME. */
function dmeWords({ leg, manner }: CallContext, toGoNm: number): string {
  const dmeNm = dmeAtEndNm(leg, toGoNm);
  if (dmeNm === null) return '';
  const will = toGoNm === 0 ? 'D M E' : 'D M E will read';
  return ` ${will} ${spokenDistance(dmeNm, manner)}.`;
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
