import { analyse } from './detector/analysis.ts';
import type { Analysis } from './detector/analysis.ts';
import { lettersOfKey } from './detector/likely-idents.ts';
import { listenedTo } from './detector/listened.ts';
import { LETTERS } from './detector/letter-tree.ts';
import { streamOf } from './detector/stream.ts';
import type { Stream } from './detector/stream.ts';
import { CENTRE_HZ } from './front-end.ts';
import type { Confirmation, IdentHeard, Known, LetterHeard } from './heard.ts';
import type { Recording } from './recording.ts';

const LEAST_CONFIDENCE = 0.5;

/**
 * Reads the ident in a recording: any of 1 to 4 letters, at any usual tone and speed, however often.
 *
 * `letters` is null when nothing was found or when it cannot be told well enough: see `why`.
 */
export function decodeIdent(recording: Recording, known: Known = {}): IdentHeard {
  return decodeStream(streamOf(recording), known);
}

/** The same for what the front end gave. */
export function decodeStream(stream: Stream, known: Known = {}): IdentHeard {
  const asked = (known.rivals ?? []).map((ident) =>
    Array.from(ident.toUpperCase(), (letter) => letter.charCodeAt(0) - 65),
  );
  return heardIn(analyse(listenedTo(stream), asked));
}

/** Whether the ident in a recording is the expected one (1 to 4 letters). */
export function confirmIdent(
  recording: Recording,
  expected: string,
  known: Known = {},
): Confirmation {
  return confirmStream(streamOf(recording), expected, known);
}

/** The same for what the front end gave. */
export function confirmStream(stream: Stream, expected: string, known: Known = {}): Confirmation {
  const detail = decodeStream(stream, known);
  const isIt = detail.letters === expected.toUpperCase();
  const verdict = isIt && detail.confidence > 0.98 ? 'confirmed' : 'cannot-tell';
  const confidence = isIt ? detail.confidence : 0;
  return { verdict, heard: detail.letters, confidence, why: detail.why, detail };
}

function heardIn(analysis: Analysis): IdentHeard {
  const best = analysis.candidates[0];
  const reading = analysis.readings[0];
  if (best === undefined || reading === undefined || best.score < 0) return NOTHING;
  const total = analysis.candidates.reduce(
    (sum, { score }) => sum + Math.exp(score - best.score),
    0,
  );
  const confidence = 1 / (total + Math.exp(-best.score));
  const letters = lettersOfKey(best.key);
  const perLetter = letters.flatMap((each): LetterHeard[] => {
    const letter = LETTERS[each];
    return letter === undefined
      ? []
      : [{ letter: letter.letter, pattern: letter.pattern, confidence }];
  });
  const { machine, hand } = reading;
  const speed = machine?.best;
  const dotS = (speed?.tables.unit ?? 0) * reading.frames.frameS;
  const isSure = confidence >= LEAST_CONFIDENCE;
  return {
    letters: isSure ? perLetter.map(({ letter }) => letter).join('') : null,
    confidence,
    toneHz: reading.tone.offsetHz + CENTRE_HZ,
    wpm: 1.2 / dotS,
    repeats: Math.max(speed?.found.length ?? 0, hand.length),
    snrDb: null,
    perLetter,
    why: isSure ? null : 'not-sure-yet',
  };
}

const NOTHING: IdentHeard = {
  letters: null,
  confidence: 0,
  toneHz: null,
  wpm: null,
  repeats: 0,
  snrDb: null,
  perLetter: [],
  why: 'ident-missing',
};
