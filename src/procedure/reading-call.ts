import { MS_PER_S } from '../base/units.ts';
import { foresee } from '../track/foresee.ts';
import { guide } from '../track/guide.ts';
import type { Question } from '../track/guidance.ts';
import { callAt, endsOverStation } from './call.ts';
import type { Call, CallContext } from './call.ts';
import { QUESTION_WORDS } from './phrases.ts';
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

/** "Needle, flag and distance, please." when the next reading is worth most, and again if it does not come. */
export function readingCall(context: CallContext, toMs: number): Call | null {
  const { advice, answeredAtMs, estimate } = context;
  const dueMs = answeredAtMs + advice.nextReadingInS * MS_PER_S;
  if (toMs < dueMs) return null;
  const isOverStation = endsOverStation(context);
  if (isOverStation && estimate.hasPassed) return null;
  const time = timeAt((toMs - dueMs) / MS_PER_S);
  if (time === null) return null;
  const atMs = dueMs + time.afterS * MS_PER_S;
  const key = `reading:${answeredAtMs}${time.n === 0 ? '' : `:${time.n}`}`;
  const atStation = isOverStation ? stationAsk(context, atMs) : 'needle';
  if (atStation === 'nothing') return null;
  if (atStation === 'flag') return callAt(key, atMs, 'routine', 'Does the flag show FROM?');
  return callAt(
    key,
    atMs,
    'routine',
    time.n === 0 ? firstWords(context) : againWords(context, time),
  );
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

/** Close to the station the needle is to be ignored: only the flag is worth a look, and not twice in a row. */
function stationAsk(context: CallContext, atMs: number): 'needle' | 'flag' | 'nothing' {
  const { estimate, leg, advice, answeredAtMs } = context;
  const { phase } = foresee(estimate, leg, atMs);
  const { toGoS } = advice.howFar;
  const stationMs = toGoS === null ? null : answeredAtMs + toGoS * MS_PER_S;
  const isPast = stationMs !== null && atMs >= stationMs + AFTER_STATION_S * MS_PER_S;
  if (isPast) return 'flag';
  if (phase !== 'near-station' && phase !== 'passage') return 'needle';
  // The answer in the cone has asked for FROM; before the station its own call will.
  return stationMs === null || advice.phase === 'passage' ? 'flag' : 'nothing';
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
