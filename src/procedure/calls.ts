import { MS_PER_S } from '../base/units.ts';
import { acrossNmPerS } from '../track/along-line.ts';
import { joinCallWords } from './arc-calls.ts';
import { callAt } from './call.ts';
import type { Call, CallContext } from './call.ts';
import { distanceCalls } from './distance-calls.ts';
import { identAgainCall } from './ident-again.ts';
import { leadsBack, lineHeadingToFlyDeg, lineMotion } from './line-heading.ts';
import { hasSecondHeading, headingWords } from './phrases.ts';
import { readingCall } from './reading-call.ts';

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
  return [
    holdCall(context),
    onCourseCall(context),
    ...distanceCalls(context, toMs),
    readingCall(context, toMs),
    identAgainCall(context, toMs),
  ].filter((each) => each !== null);
}

/**
 * "Now heading one zero eight." when the first heading has been held long enough; later than the reading that
 * was due: with the needle, which alone shows where the aircraft is by then.
 */
function holdCall(context: CallContext): Call | null {
  const { advice, answeredAtMs } = context;
  const way = advice.whichWay;
  if (!hasSecondHeading(way)) return null;
  const atMs = answeredAtMs + way.holdS * MS_PER_S;
  const read = way.holdS > advice.nextReadingInS ? ' Read the needle.' : '';
  const say = joinCallWords(context) ?? `Now ${headingWords(way.thenHeadingDeg)}.${read}`;
  return callAt(`hold:${answeredAtMs}`, atMs, 'now', say);
}

/** From being told to turning, s. */
const REACTION_S = 5;
/** Farther ahead than this nothing is foreseen on one heading, s. */
const HORIZON_S = 900;

/** A heading that leads back to the line, with none to follow it, is not flown on through the line. */
function onCourseCall(context: CallContext): Call | null {
  const { advice, answeredAtMs, estimate, leg } = context;
  const { whichWay: way, estimate: seen } = advice;
  if (leg.leg.arc || hasSecondHeading(way) || seen.crossTrackNm === null) return null;
  if (estimate.rangeCheck.kind === 'flying' || !leadsBack(estimate, way.headingDeg)) return null;
  const afterS = -seen.crossTrackNm / acrossNmPerS(lineMotion(estimate), way.headingDeg);
  if (!(afterS > REACTION_S && afterS < HORIZON_S)) return null;
  const heading = headingWords(lineHeadingToFlyDeg(estimate, way.headingDeg));
  return callAt(
    `on-course:${answeredAtMs}`,
    answeredAtMs + (afterS - REACTION_S) * MS_PER_S,
    'now',
    `You should be on course now: ${heading}. Read the needle.`,
  );
}
