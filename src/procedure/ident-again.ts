import { MS_PER_S } from '../base/units.ts';
import { phonetic } from '../speech/phonetic.ts';
import { callAt } from './call.ts';
import type { Call, CallContext } from './call.ts';
import type { IdentKept } from './ident-kept.ts';

const S_PER_MIN = 60;

/** The answer has asked for the ident itself: so long after it, it is asked for by name, s. */
const AFTER_ANSWER_S = 20;

/** So long the call may wait for a quiet moment, s. Common practice, no source. */
const WAITS_S = 120;

/** Over the station nobody listens to Morse. */
const BUSY: ReadonlySet<string> = new Set(['near-station', 'passage']);

/**
 * "Identify Quebec Echo Victor again.": every so many minutes since the ident was confirmed, and once when the
 * answers have come to doubt the station and it has not been confirmed since.
 *
 * *Source:* an ident that stops means a station that is not to be used (AIM 1-1-3 c), which only listening again
 * tells; how often: common practice, no source.
 */
export function identAgainCall(context: CallContext, toMs: number): Call | null {
  const { ident, leg, advice } = context;
  if (ident === undefined || ident.confirmedAtMs === null || BUSY.has(advice.phase)) return null;
  const due = doubtDue(ident) ?? againDue(ident, toMs);
  if (due === null || due.atMs > toMs) return null;
  const say = `Identify ${phonetic(leg.leg.station.ident)} again.`;
  return { ...callAt(due.key, due.atMs, due.urgency, say), untilMs: due.atMs + WAITS_S * MS_PER_S };
}

type Due = Pick<Call, 'key' | 'atMs' | 'urgency'>;

function doubtDue({ confirmedAtMs, doubtedSinceMs }: IdentKept): Due | null {
  if (doubtedSinceMs === null || (confirmedAtMs ?? 0) >= doubtedSinceMs) return null;
  const atMs = doubtedSinceMs + AFTER_ANSWER_S * MS_PER_S;
  return { key: `ident-doubt:${doubtedSinceMs}`, atMs, urgency: 'soon' };
}

function againDue({ confirmedAtMs, againMin }: IdentKept, toMs: number): Due | null {
  if (confirmedAtMs === null || againMin === null || !(againMin > 0)) return null;
  const everyMs = againMin * S_PER_MIN * MS_PER_S;
  const times = Math.floor((toMs - confirmedAtMs) / everyMs);
  if (times < 1) return null;
  const key = `ident-again:${confirmedAtMs}:${times}`;
  return { key, atMs: confirmedAtMs + times * everyMs, urgency: 'routine' };
}
