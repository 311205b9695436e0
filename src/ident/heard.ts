/**
 * Why an ident was not read, or not confirmed, or what has to be known about the one that was.
 *
 * `silent`: no sound at all · `too-short`: less sound than an ident takes · `too-weak`: a tone is keyed
 * under the noise, its letters cannot be told · `no-complete-ident`: each ident heard is cut off ·
 * `two-at-once`: more than one ident was heard · `voice-over-it`: speech where the ident should be ·
 * `test-code`: the station sends TEST, it must not be used · `ident-missing`: listened long enough for
 * an ident, and there was none · `dme-only`: keyed on the tone of a DME alone, the VOR is not identified ·
 * `not-sure-yet`: heard, but another ident fits nearly as well · `uneven-keying`: marks that are neither
 * dots nor dashes · `steady-tone`: a tone that never stops · `off-tone`: keyed on a tone far from those of
 * VOR and DME · `even-pulses`: dots at one pace and no letters, as a test signal sends them ·
 * `too-few-elements`: an ident so short that stray beeps could be it ·
 * `has-figures`: figures are expected, and only letters are read.
 */
export type Why =
  | 'silent'
  | 'too-short'
  | 'too-weak'
  | 'no-complete-ident'
  | 'two-at-once'
  | 'voice-over-it'
  | 'test-code'
  | 'ident-missing'
  | 'dme-only'
  | 'not-sure-yet'
  | 'uneven-keying'
  | 'steady-tone'
  | 'off-tone'
  | 'even-pulses'
  | 'too-few-elements'
  | 'has-figures';

/** One letter of the likeliest ident. */
export interface LetterHeard {
  readonly letter: string;
  /** How probable it is that just this letter was keyed here, 0 to 1. */
  readonly confidence: number;
  /** Its elements as dots and dashes: `-.-`. */
  readonly pattern: string;
}

/** What was heard in a recording. */
export interface IdentHeard {
  /** The ident; null when there was none or it cannot be told well enough. */
  readonly letters: string | null;
  /** How probable it is that just `letters` were keyed, 0 to 0.999; 0 when no letters are told. */
  readonly confidence: number;
  readonly toneHz: number | null;
  /** Keying speed, words a minute (PARIS). */
  readonly wpm: number | null;
  /** How many times it was keyed, a cut one included. */
  readonly repeats: number;
  /** Power of the held tone over the noise in 3 kHz, decibels. */
  readonly snrDb: number | null;
  /** The likeliest ident, letter by letter: also given when `letters` is null but something was keyed. */
  readonly perLetter: readonly LetterHeard[];
  readonly why: Why | null;
}

/** Which idents can be received here on the frequency set; left out: any ident can. */
export interface Known {
  readonly rivals?: readonly string[];
}

/**
 * Whether the ident heard is the one expected.
 *
 * `different` only when another ident was heard whole and well; never because something was missing.
 */
export interface Confirmation {
  readonly verdict: 'confirmed' | 'different' | 'cannot-tell';
  readonly heard: string | null;
  /**
   * How probable it is that `heard` was keyed, 0 to 0.999: the expected ident where it is confirmed, the
   * other one where it is different. 0 where it cannot be told: nothing is claimed then.
   */
  readonly confidence: number;
  readonly why: Why | null;
  readonly detail: IdentHeard;
}
