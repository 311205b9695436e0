import { accept, refuse } from '../base/result.ts';
import type { FieldProblem, Result } from '../base/result.ts';
import { IDENT_LIMITS, LONGEST_IDENT_SOUND_S } from './limits.ts';
import { isIdent } from './morse.ts';
import { repeatedTimeline, timelineLengthS, wordGapS } from './timeline.ts';
import { keyedSamples } from './synthesis.ts';
import { writeWav } from './wav.ts';

type Setting = keyof typeof IDENT_LIMITS;

/** An ident to be keyed as sound, with every setting filled in and within `IDENT_LIMITS`. */
export type IdentRequest = Readonly<Record<Setting, number>> & {
  /** 1 to 4 letters or figures, in capitals. */
  readonly ident: string;
};

/** What each setting is, for a refusal. */
const EXPECTED: Readonly<Record<Setting, string>> = {
  wpm: 'a keying speed in words a minute',
  toneHz: 'a tone in hertz',
  repeats: 'a whole number of repeats',
  intervalS: 'seconds from one ident to the next',
  sampleRateHz: 'a whole number of samples a second',
};

const WHOLE: ReadonlySet<Setting> = new Set(['repeats', 'sampleRateHz']);

const SETTINGS = Object.keys(IDENT_LIMITS) as readonly Setting[];

/**
 * Reads what is asked of an ident sound: the ident and the query of its address.
 *
 * Settings left out are as usual for a VOR. Refused, each with its field: an ident that cannot be
 * keyed, a setting out of range or not a number, a setting that is not known, a sound that would be
 * longer than four minutes.
 */
export function readIdentRequest(
  ident: string,
  query: Readonly<Record<string, unknown>>,
): Result<IdentRequest> {
  const values = SETTINGS.map((name) => [name, settingIn(query, name)] as const);
  const problems = [
    ...(isIdent(ident) ? [] : [problem('ident', '1 to 4 letters or figures', ident)]),
    ...Object.keys(query)
      .filter((name) => !Object.hasOwn(IDENT_LIMITS, name))
      .map((name) => problem(name, `one of ${SETTINGS.join(', ')}`, query[name])),
    ...values.filter(([, value]) => value === null).map(([name]) => outOfRange(name, query[name])),
  ];
  if (problems.length > 0) return refuse(problems);
  const request = {
    ident: ident.toUpperCase(),
    ...Object.fromEntries(values),
  } as unknown as IdentRequest;
  const lengthS = soundLengthS(request);
  if (lengthS <= LONGEST_IDENT_SOUND_S) return accept(request);
  const expected = `a sound of at most ${LONGEST_IDENT_SOUND_S} seconds in all`;
  return refuse([
    problem('repeats', expected, `${request.repeats} repeats, ${Math.ceil(lengthS)} seconds`),
  ]);
}

/**
 * The WAV file of an ident: 16-bit mono, a word gap of quiet before the first mark and after the last,
 * so that a listener (or a decoder) knows that no letter is missing.
 */
export function identWav(request: IdentRequest): Uint8Array<ArrayBuffer> {
  const { ident, toneHz, sampleRateHz, wpm } = request;
  const quietS = wordGapS(wpm);
  const marks = repeatedTimeline(ident, request);
  const tone = { toneHz, sampleRateHz, leadS: quietS, tailS: quietS };
  return writeWav(keyedSamples(marks, tone), sampleRateHz);
}

function soundLengthS(request: IdentRequest): number {
  return timelineLengthS(repeatedTimeline(request.ident, request)) + 2 * wordGapS(request.wpm);
}

/** The value of a setting, the usual one when left out, null when it cannot be taken. */
function settingIn(query: Readonly<Record<string, unknown>>, name: Setting): number | null {
  const given = Object.hasOwn(query, name) ? query[name] : undefined;
  const { min, max, usual } = IDENT_LIMITS[name];
  if (given === undefined) return usual;
  const isText = typeof given === 'string' && /^\d+(\.\d+)?$/.test(given);
  const value = typeof given === 'number' || isText ? Number(given) : Number.NaN;
  if (!(value >= min && value <= max)) return null;
  return WHOLE.has(name) && !Number.isInteger(value) ? null : value;
}

function outOfRange(name: Setting, given: unknown): FieldProblem {
  const { min, max } = IDENT_LIMITS[name];
  return problem(name, `${EXPECTED[name]}, ${min} to ${max}`, given);
}

function problem(field: string, expected: string, given: unknown): FieldProblem {
  const got = typeof given === 'string' ? given : JSON.stringify(given ?? null);
  return { field, expected, got: got.slice(0, 80) };
}
