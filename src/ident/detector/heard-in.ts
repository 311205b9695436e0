import { CENTRE_HZ } from '../front-end.ts';
import type { IdentHeard, LetterHeard, Why } from '../heard.ts';
import { judge } from './judged.ts';
import type { Judged } from './judged.ts';
import type { Analysis } from './analysis.ts';
import { lettersOfKey } from './likely-idents.ts';
import { LETTERS } from './letter-tree.ts';
import type { Listened } from './listened.ts';
import { quantile } from './order.ts';
import { letterShare, likeliestOf, textOfKey } from './posterior.ts';
import type { Posterior } from './posterior.ts';

/** An ident less probable than this is not named. */
const LEAST_CONFIDENCE = 0.5;

/** Between 1020 Hz of a VOR and 1350 Hz of a DME. *Source:* AIM 1-1-7 f. */
const BETWEEN_TONES_HZ = 1185;

/** Evidence from which an ident counts as keyed once more, nats. */
const HEARD_AGAIN = 30;

/** A VOR sends its ident at least every 30 s: after this long without, it is missing. */
const MISSING_S = 35;

const TOO_SHORT_S = 2.5;

/** Amplitude of the whole stream under which there is nothing to hear: 80 dB below full scale. */
const SILENT = 1e-4;

/** What a recording says, with the close look at its likeliest ident. */
export interface Told {
  readonly heard: IdentHeard;
  readonly best: Judged | null;
}

/** Puts what was found into words and figures. */
export function heardIn(listened: Listened, analysis: Analysis, posterior: Posterior): Told {
  const key = likeliestOf(posterior);
  const confidence = key === null ? 0 : (posterior.get(key) ?? 0);
  const best = key === null ? null : judge(analysis, key);
  if (key === null || best === null || confidence < 0.01) {
    return { heard: { ...NOTHING, why: whyNothing(listened) }, best: null };
  }
  const why = whyUnsure(listened, best, confidence);
  const isTold = why === null;
  const text = textOfKey(key);
  const heard: IdentHeard = {
    letters: isTold ? text : null,
    confidence,
    toneHz: best.reading.tone.offsetHz + CENTRE_HZ,
    wpm: wpmOf(best),
    repeats: repeatsOf(analysis, best),
    snrDb: snrDbOf(best),
    perLetter: lettersOfKey(key).flatMap((each, at): LetterHeard[] => {
      const letter = LETTERS[each];
      const share = letterShare(posterior, key, at);
      return letter === undefined
        ? []
        : [{ letter: letter.letter, confidence: share, pattern: letter.pattern }];
    }),
    why: isTold ? whyWarned(text, isOnDmeAlone(analysis, best)) : why,
  };
  return { heard, best };
}

/** What has to be known of an ident that is told; null: nothing. */
function whyWarned(text: string, isDmeAlone: boolean): Why | null {
  if (text === 'TEST') return 'test-code';
  return isDmeAlone ? 'dme-only' : null;
}

/** Whether the ident was keyed on the tone of a DME and never on that of a VOR: then the VOR may be off the air. */
function isOnDmeAlone(analysis: Analysis, best: Judged): boolean {
  const onVor = analysis.readings.filter(
    ({ tone }) => tone.offsetHz + CENTRE_HZ < BETWEEN_TONES_HZ,
  );
  if (best.reading.tone.offsetHz + CENTRE_HZ < BETWEEN_TONES_HZ) return false;
  const heard = onVor.flatMap(
    (reading) => judge({ ...analysis, readings: [reading] }, best.key)?.heard ?? [],
  );
  return !heard.some(({ evidence }) => evidence > HEARD_AGAIN);
}

/** Why the likeliest ident is not told; null when it is. */
function whyUnsure(listened: Listened, best: Judged, confidence: number): Why | null {
  if (best.isContradicted) return 'two-at-once';
  if (confidence < LEAST_CONFIDENCE) {
    if (hasVoice(listened)) return 'voice-over-it';
    return best.perElement < 20 ? 'too-weak' : 'not-sure-yet';
  }
  if (!best.isWhole) return 'no-complete-ident';
  if (!best.isClear) return hasVoice(listened) ? 'voice-over-it' : 'too-weak';
  return null;
}

function whyNothing({ stream }: Listened): Why {
  let peak = 0;
  for (let n = 0; n < stream.re.length; n += 1) {
    peak = Math.max(peak, Math.abs(stream.re[n] ?? 0), Math.abs(stream.im[n] ?? 0));
  }
  const lengthS = stream.re.length / stream.rateHz;
  if (lengthS < TOO_SHORT_S) return 'too-short';
  if (peak < SILENT) return 'silent';
  return lengthS >= MISSING_S ? 'ident-missing' : 'not-sure-yet';
}

/** Whether the noise beside the tone rises by 10 dB again and again, as speech makes it do. */
function hasVoice(listened: Listened): boolean {
  const { factor } = listened.besideAt(1020 - CENTRE_HZ);
  return quantile(factor, 0.85) > 10;
}

function wpmOf({ heard, reading }: Judged): number | null {
  const first = heard[0];
  return first === undefined ? null : 1.2 / (first.dotFrames * reading.frames.frameS);
}

/** Each time it was keyed, on either tone. */
function repeatsOf(analysis: Analysis, best: Judged): number {
  const others = analysis.readings.filter((reading) => reading !== best.reading);
  const elsewhere = others.flatMap(
    (reading) => judge({ ...analysis, readings: [reading] }, best.key)?.heard ?? [],
  );
  return best.heard.length + elsewhere.filter(({ evidence }) => evidence > HEARD_AGAIN).length;
}

/** Tone over noise in 3 kHz: what a frame holds, spread over its own bandwidth. */
function snrDbOf({ reading }: Judged): number {
  const { noise, frameS } = reading.frames;
  const noise3k = quantile(noise, 0.5) * frameS * 3000;
  return 10 * Math.log10(reading.meanAmplitude ** 2 / Math.max(noise3k, 1e-30));
}

const NOTHING: IdentHeard = {
  letters: null,
  confidence: 0,
  toneHz: null,
  wpm: null,
  repeats: 0,
  snrDb: null,
  perLetter: [],
  why: 'not-sure-yet',
};
