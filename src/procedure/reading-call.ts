import { MS_PER_S } from '../base/units.ts';
import { foresee } from '../track/foresee.ts';
import { guide } from '../track/guide.ts';
import type { Question } from '../track/guidance.ts';
import { callAt, endsOverStation } from './call.ts';
import type { Call, CallContext } from './call.ts';
import { QUESTION_WORDS, hasSecondHeading } from './phrases.ts';
import { worthAsking } from './question.ts';

/** A reading that was not given is asked for again each minute, a few times. Common practice, no source. */
const AGAIN_S = 60;
const AGAIN_TIMES = 3;
/** Then this often, while anybody may still be listening, s. */
const SELDOM_S = 120;
const GIVE_UP_S = 1800;
/** So long after the reading was due the answer is called old, s. */
const OLD_S = 120;
/** The call of the station asks for FROM itself: this long after it the flag is asked for, s. */
const AFTER_STATION_S = 30;

/** Two calls in one breath are one too many: so long after a heading the reading is asked for, ms. */
const AFTER_HEADING_MS = 8000;

/** "Needle, flag and distance, please." when the next reading is worth most, and again if it does not come. */
export function readingCall(context: CallContext, toMs: number): Call | null {
  const { answeredAtMs, estimate } = context;
  const isOverStation = endsOverStation(context);
  if (isOverStation && estimate.hasPassed) return null;
  const fromFlagMs = isOverStation ? flagDueMs(context) : null;
  if (fromFlagMs !== null && toMs >= fromFlagMs) {
    return callInTurn(`flag:${answeredAtMs}`, fromFlagMs, toMs, () => 'Does the flag show FROM?');
  }
  const called = callInTurn(`reading:${answeredAtMs}`, readingDueMs(context), toMs, (time) =>
    time.n === 0 ? firstWords(context) : againWords(context, time),
  );
  return called !== null && isOverStation && isAtStation(context, called.atMs) ? null : called;
}

/** The last call of a series that was due by now; null: not due yet, or not asked for any more. */
function callInTurn(
  key: string,
  dueMs: number,
  toMs: number,
  words: (time: CallTime) => string,
): Call | null {
  if (toMs < dueMs) return null;
  const time = timeAt((toMs - dueMs) / MS_PER_S);
  if (time === null) return null;
  const atMs = dueMs + time.afterS * MS_PER_S;
  return callAt(time.n === 0 ? key : `${key}:${time.n}`, atMs, 'routine', words(time));
}

function readingDueMs({ advice, answeredAtMs }: CallContext): number {
  const { whichWay: way, nextReadingInS } = advice;
  const dueMs = answeredAtMs + nextReadingInS * MS_PER_S;
  if (!hasSecondHeading(way)) return dueMs;
  const headingMs = answeredAtMs + way.holdS * MS_PER_S;
  return Math.abs(dueMs - headingMs) < AFTER_HEADING_MS ? headingMs + AFTER_HEADING_MS : dueMs;
}

interface CallTime {
  /** 0: the reading is due; else how often it was asked for before. */
  readonly n: number;
  readonly afterS: number;
}

/** The last time at which the reading was to be asked for, by now; null: it is not asked for any more. */
function timeAt(overdueS: number): CallTime | null {
  if (overdueS > GIVE_UP_S) return null;
  const often = Math.min(AGAIN_TIMES, Math.floor(overdueS / AGAIN_S));
  const seldom = Math.max(0, Math.floor((overdueS - AGAIN_TIMES * AGAIN_S) / SELDOM_S));
  return { n: often + seldom, afterS: often * AGAIN_S + seldom * SELDOM_S };
}

/** When the flag should show FROM; the answer in the cone, or the call of the station, has asked for it before. */
function flagDueMs({ advice, answeredAtMs }: CallContext): number | null {
  if (advice.phase === 'passage') return answeredAtMs + AFTER_STATION_S * MS_PER_S;
  const { toGoS } = advice.howFar;
  return toGoS === null ? null : answeredAtMs + (toGoS + AFTER_STATION_S) * MS_PER_S;
}

/** Close to the station the needle is to be ignored, so nobody asks for it. */
function isAtStation({ estimate, leg }: CallContext, atMs: number): boolean {
  const { phase } = foresee(estimate, leg, atMs);
  return phase === 'near-station' || phase === 'passage';
}

function firstWords(context: CallContext): string {
  const { estimate, leg } = context;
  const guidance = guide(estimate, leg);
  const question = worthAsking(estimate, guidance);
  if (guidance.arc?.isJoining === false) {
    return question === null ? 'Distance, please.' : QUESTION_WORDS[question];
  }
  return capital(askWords(question, leg.leg.station.hasDme));
}

/** The readings first, then what else would help. */
function askWords(question: Question | null, hasDme: boolean): string {
  const usual = usualWords(hasDme);
  switch (question) {
    case 'centre-needle-from':
      return QUESTION_WORDS[question];
    case 'turn-obs-three-left':
      return `${usual}, with the O B S three degrees left.`;
    case 'read-heading':
      return `heading, ${usual}, please.`;
    case 'repeat-reading':
      return `${usual} again, please.`;
    case 'read-needle':
    case 'read-flag':
    case 'read-dme':
    case 'compare-compass':
    case null:
      return `${usual}, please.`;
  }
}

function againWords({ leg }: CallContext, { afterS }: CallTime): string {
  const words = `${leg.leg.arc ? 'distance' : usualWords(leg.leg.station.hasDme)}, please.`;
  return afterS >= OLD_S ? `Old answer: ${words}` : capital(words);
}

function usualWords(hasDme: boolean): string {
  return hasDme ? 'needle, flag and distance' : 'needle and flag';
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
