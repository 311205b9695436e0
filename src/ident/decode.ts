import type { Confirmation, IdentHeard, Known } from './heard.ts';
import { streamOf } from './detector/stream.ts';
import { tell, verdictFrom } from './detector/tell.ts';
import type { Recording } from './recording.ts';

/**
 * Reads the ident in a recording: any of 1 to 4 letters, at any usual tone and speed, however often.
 *
 * `letters` is null when nothing was found or when it cannot be told well enough: see `why`; the
 * likeliest ident stands in `perLetter` all the same. `known`: which idents can be received here.
 */
export function decodeIdent(recording: Recording, known: Known = {}): IdentHeard {
  return tell(streamOf(recording), known, null).told.heard;
}

/**
 * Whether the ident in a recording is the expected one (1 to 4 letters; with figures it cannot be told).
 *
 * Confirmed only when it is far more probable than all others together, was heard at least once whole,
 * with quiet before and after, and nothing else was heard.
 */
export function confirmIdent(
  recording: Recording,
  expected: string,
  known: Known = {},
): Confirmation {
  return verdictFrom(tell(streamOf(recording), known, expected), expected);
}
