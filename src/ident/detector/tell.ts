import type { Confirmation, Known, Why } from '../heard.ts';
import { analyse, keyedIn } from './analysis.ts';
import type { Analysis, Keyed } from './analysis.ts';
import { heardIn, shareOf } from './heard-in.ts';
import type { Told } from './heard-in.ts';
import { lettersOfKey } from './likely-idents.ts';
import type { IdentKey } from './likely-idents.ts';
import { listenedTo } from './listened.ts';
import type { Listened } from './listened.ts';
import { patternsOf } from './marks-of.ts';
import { keyOfText, posteriorOf, textOfKey } from './posterior.ts';
import type { Posterior } from './posterior.ts';
import type { Stream } from './stream.ts';

/** The expected ident is confirmed when it is at least so probable. */
const CONFIRMED = 0.985;

/** Another one is heard instead when it is at least so probable, and the expected one at most so. */
const SURE_OF_OTHER = 0.98;
const OUT_OF_QUESTION = 1e-4;

/** Elements that another ident needs to be called different when it was heard once only. */
const LEAST_ELEMENTS = 6;

/** A stretch of sound, with what is keyed in it. */
interface Stretch {
  readonly listened: Listened;
  readonly keyed: Keyed;
}

/** All that a stretch of sound tells. */
export interface Telling {
  readonly stretch: Stretch;
  readonly analysis: Analysis;
  readonly posterior: Posterior;
  readonly told: Told;
}

/** Reads a stretch of the stream. `expected`: an ident that is weighed in any case; null: none. */
export function tell(stream: Stream, known: Known, expected: string | null): Telling {
  const listened = listenedTo(stream);
  return tellOf({ listened, keyed: keyedIn(listened) }, known, expected);
}

/** What a stretch that has been read tells when another ident is expected: as if it were read again for it. */
export function tellAgain({ stretch }: Telling, known: Known, expected: string): Telling {
  return tellOf(stretch, known, expected);
}

function tellOf(stretch: Stretch, known: Known, expected: string | null): Telling {
  const asked = expected === null ? [] : keysOf([expected]);
  const rivals = keysOf(known.rivals ?? []);
  const all = rivals.length === 0 ? [] : [...new Set([...rivals, ...asked])];
  const analysis = analyse(stretch.keyed, [...all, ...asked]);
  const posterior = posteriorOf(analysis, all);
  return { stretch, analysis, posterior, told: heardIn(stretch.listened, analysis, posterior) };
}

/** Whether what was told is the expected ident. */
export function verdictFrom({ told, posterior }: Telling, expected: string): Confirmation {
  const key = keyOfText(expected);
  const detail = told.heard;
  const likelihood = key === null ? 0 : (posterior.get(key) ?? 0);
  const verdict = key === null ? 'cannot-tell' : verdictOn(key, likelihood, told);
  const why = verdict === 'cannot-tell' ? whyNot(expected, detail.why) : detail.why;
  const confidence = verdict === 'cannot-tell' ? 0 : shareOf(told.likelihood);
  return { verdict, heard: detail.letters, confidence, why, detail };
}

/** Reasons that only put off what can never be told of an ident of one letter and two elements at most. */
const PUTS_OFF: readonly (Why | null)[] = [
  null,
  'no-complete-ident',
  'not-sure-yet',
  'too-weak',
  'uneven-keying',
];

function whyNot(expected: string, why: Why | null): Why {
  if (/\d/.test(expected)) return 'has-figures';
  const letters = lettersOfKey(keyOfText(expected) ?? 0);
  const isTooShort = letters.length === 1 && patternsOf(letters).join('').length < 3;
  if (isTooShort && PUTS_OFF.includes(why)) return 'too-few-elements';
  return why ?? 'not-sure-yet';
}

function keysOf(idents: readonly string[]): IdentKey[] {
  return idents.flatMap((ident) => keyOfText(ident) ?? []);
}

function verdictOn(key: IdentKey, likelihood: number, told: Told): Confirmation['verdict'] {
  const { heard, best } = told;
  if (best === null || heard.letters === null) return 'cannot-tell';
  // TEST identifies nothing, and a DME alone does not identify the VOR, whatever letters were expected.
  if (best.key === key && heard.why !== null) return 'cannot-tell';
  if (best.key === key) return likelihood >= CONFIRMED ? 'confirmed' : 'cannot-tell';
  const isOther = told.likelihood >= SURE_OF_OTHER && likelihood <= OUT_OF_QUESTION;
  return isOther && (best.heard.length >= 2 || isPlain(best.key, key))
    ? 'different'
    : 'cannot-tell';
}

/** Whether an ident heard once is enough to call it another one than the expected. */
function isPlain(heard: IdentKey, expected: IdentKey): boolean {
  const letters = lettersOfKey(heard);
  if (letters.length < 3 || patternsOf(letters).join('').length < LEAST_ELEMENTS) return false;
  // One letter more at either end may be a syllable or a click.
  return letters.length === 3 || !textOfKey(heard).includes(textOfKey(expected));
}
