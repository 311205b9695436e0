import { bearingPhraseAt } from './bearing-phrase.ts';
import { commandPhraseAt } from './command-phrase.ts';
import { distancePhraseAt, milesPhraseAt } from './distance-phrase.ts';
import { figuresAt } from './figures.ts';
import { flagPhraseAt } from './flag-phrase.ts';
import { NO } from './grammar.ts';
import type { Parse, Piece, Production } from './grammar.ts';
import type { Heard, HearingScale, Rejected } from './heard.ts';
import { needlePhraseAt } from './needle-phrase.ts';
import { joined } from './sentence.ts';
import type { Token } from './tokens.ts';
import { tokensOf, wordAt } from './tokens.ts';

/** Every phrase of the vocabulary; the first production that knows the words at a place has them. */
const PRODUCTIONS: readonly Production[] = [
  commandPhraseAt,
  bearingPhraseAt,
  distancePhraseAt,
  milesPhraseAt,
  needlePhraseAt,
  flagPhraseAt,
];

/** Words between phrases that mean nothing by themselves. */
const BETWEEN: ReadonlySet<string> = new Set(['and', 'the', 'with', 'please']);

/** A sign before figures; hyphens between words never get here. */
const SIGNS: ReadonlySet<string> = new Set(['-', '‐', '–', '−', '+']);

/** Longer than any sentence of the vocabulary with all its readings. */
const LONGEST_SENTENCE = 300;

/**
 * What one typed or spoken sentence means: readings, a command, or why it was not understood.
 *
 * The one vocabulary for the keyboard and the voice, spoken words, figures and short forms alike:
 * "heading one two five", "hdg 125 1.5 l dme 7.2 to", "half right, flag from", "how far to go". Several
 * readings may stand in one sentence. Either all of it is understood or none of it: the reason names
 * the words that were not. `scale` is the course indicator's (5 dots to full deflection when left out).
 *
 * `text` repeats what was understood in the vocabulary's own words, nine as "nine", with commas between
 * phrases. Two different values for one instrument are refused. "correction" by itself takes the last
 * recorded reading back; between readings ("heading 125, correction, heading 135") it replaces what was
 * said before it in this sentence, and nothing recorded is touched.
 * *Source:* for "correction": ICAO Annex 10 volume II, 5.2.1.5.8 (from memory).
 */
export function hear(sentence: string, scale: HearingScale = { dotsFullScale: 5 }): Heard {
  if (sentence.length > LONGEST_SENTENCE) return rejected('too long: one sentence at a time');
  const tokens = tokensOf(sentence);
  const slip = slipIn(tokens);
  if (slip !== null) return rejected(slip);
  const pieces: Piece[] = [];
  let at = 0;
  while (at < tokens.length) {
    if (tokens[at]?.kind === 'pause' || BETWEEN.has(wordAt(tokens, at))) {
      at += 1;
      continue;
    }
    const parse = parseAt(tokens, at, scale);
    if (parse.kind === 'no') return rejected(notUnderstood(tokens, at));
    if (parse.kind === 'refused') return rejected(parse.reason);
    pieces.push(parse.piece);
    at = parse.next;
  }
  return joined(pieces);
}

function parseAt(tokens: readonly Token[], at: number, scale: HearingScale): Parse {
  for (const production of PRODUCTIONS) {
    const parse = production(tokens, at, scale);
    if (parse.kind !== 'no') return parse;
  }
  return NO;
}

/** A slip of the keyboard that makes any reading of the sentence a guess, or null. */
function slipIn(tokens: readonly Token[]): string | null {
  const unclear = tokens.find((each) => each.kind === 'unclear');
  if (unclear !== undefined) {
    return `"${unclear.said}": write tenths with a point, and a blank after a comma`;
  }
  const sign = tokens.find((each) => SIGNS.has(each.said));
  return sign === undefined ? null : `"${sign.said}": no signs; the needle is left or right`;
}

function notUnderstood(tokens: readonly Token[], at: number): string {
  let end = at;
  for (let found = figuresAt(tokens, at); found !== null; found = figuresAt(tokens, end)) {
    end = found.next;
  }
  const said = tokens.slice(at, Math.max(end, at + 1)).map((each) => each.said);
  return end > at
    ? `"${said.join(' ')}" could be anything: heading, distance, or needle left or right?`
    : `"${said.join(' ')}" is not understood`;
}

function rejected(reason: string): Rejected {
  return { kind: 'rejected', reason };
}
