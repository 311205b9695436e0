import { analyse } from './detector/analysis.ts';
import { heardIn } from './detector/heard-in.ts';
import type { Told } from './detector/heard-in.ts';
import type { IdentKey } from './detector/likely-idents.ts';
import { lettersOfKey } from './detector/likely-idents.ts';
import { listenedTo } from './detector/listened.ts';
import { patternsOf } from './detector/marks-of.ts';
import { keyOfText, posteriorOf } from './detector/posterior.ts';
import type { Posterior } from './detector/posterior.ts';
import { streamOf } from './detector/stream.ts';
import type { Stream } from './detector/stream.ts';
import type { Confirmation, IdentHeard, Known } from './heard.ts';
import type { Recording } from './recording.ts';

/** The expected ident is confirmed when it is at least so probable. */
const CONFIRMED = 0.97;

/** Another one is heard instead when it is at least so probable, and the expected one at most so. */
const SURE_OF_OTHER = 0.98;
const OUT_OF_QUESTION = 1e-4;

/** Elements that another ident needs to be called different when it was heard once only. */
const LEAST_ELEMENTS = 6;

/**
 * Reads the ident in a recording: any of 1 to 4 letters, at any usual tone and speed, however often.
 *
 * `letters` is null when nothing was found or when it cannot be told well enough: see `why`; the
 * likeliest ident stands in `perLetter` all the same. `known`: which idents can be received here.
 */
export function decodeIdent(recording: Recording, known: Known = {}): IdentHeard {
  return decodeStream(streamOf(recording), known);
}

/**
 * Whether the ident in a recording is the expected one (1 to 4 letters; anything else cannot be told).
 *
 * Confirmed only when it is far more probable than all others together, was heard at least once whole,
 * with quiet before and after, and nothing else was heard.
 */
export function confirmIdent(
  recording: Recording,
  expected: string,
  known: Known = {},
): Confirmation {
  return confirmStream(streamOf(recording), expected, known);
}

/** The same as `decodeIdent` for what the front end gave. */
export function decodeStream(stream: Stream, known: Known = {}): IdentHeard {
  return tell(stream, known, []).told.heard;
}

/** The same as `confirmIdent` for what the front end gave. */
export function confirmStream(stream: Stream, expected: string, known: Known = {}): Confirmation {
  const key = keyOfText(expected);
  const { told, posterior } = tell(stream, known, key === null ? [] : [key]);
  const detail = told.heard;
  const confidence = key === null ? 0 : (posterior.get(key) ?? 0);
  const verdict = key === null ? 'cannot-tell' : verdictOn(key, confidence, told);
  const why = detail.why ?? (verdict === 'cannot-tell' ? 'not-sure-yet' : null);
  return { verdict, heard: detail.letters, confidence, why, detail };
}

function tell(
  stream: Stream,
  known: Known,
  asked: readonly IdentKey[],
): { readonly told: Told; readonly posterior: Posterior } {
  const rivals = (known.rivals ?? []).flatMap((ident) => keyOfText(ident) ?? []);
  const all = rivals.length === 0 ? [] : [...new Set([...rivals, ...asked])];
  const listened = listenedTo(stream);
  const analysis = analyse(listened, [...all, ...asked]);
  const posterior = posteriorOf(analysis, all);
  return { told: heardIn(listened, analysis, posterior), posterior };
}

function verdictOn(
  key: IdentKey,
  confidence: number,
  { heard, best }: Told,
): Confirmation['verdict'] {
  if (best === null || heard.letters === null) return 'cannot-tell';
  if (best.key === key) return confidence >= CONFIRMED ? 'confirmed' : 'cannot-tell';
  const letters = lettersOfKey(best.key);
  const isLong = letters.length >= 3 && patternsOf(letters).join('').length >= LEAST_ELEMENTS;
  const isOther = heard.confidence >= SURE_OF_OTHER && confidence <= OUT_OF_QUESTION;
  return isOther && (isLong || best.heard.length >= 2) ? 'different' : 'cannot-tell';
}
