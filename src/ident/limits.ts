/** A range with the value that is taken when none is asked for. */
export interface Limits {
  readonly min: number;
  readonly max: number;
  readonly usual: number;
}

/**
 * What an ident may be asked to sound like; page and server read these same numbers.
 *
 * A VOR keys its ident at about 7 words a minute on 1020 Hz, at least once every 30 s, and ten seconds
 * apart where no voice shares the channel.
 * *Source:* ICAO Annex 10 volume I, 3.3.6.5 (speed and interval from memory); tone: AIM 1-1-7 f.
 */
export const IDENT_LIMITS = {
  /** Words a minute, the word PARIS of 50 dot lengths. */
  wpm: { min: 4, max: 20, usual: 7 },
  toneHz: { min: 300, max: 3000, usual: 1020 },
  repeats: { min: 1, max: 20, usual: 2 },
  /** From the start of one ident to the start of the next, seconds. */
  intervalS: { min: 2, max: 30, usual: 10 },
  sampleRateHz: { min: 8000, max: 48_000, usual: 16_000 },
} as const satisfies Readonly<Record<string, Limits>>;

/** The longest ident sound that is made, seconds: 16-bit samples at 48 kHz then stay under 24 MB. */
export const LONGEST_IDENT_SOUND_S = 240;
