import { figuresSpoken } from './numbers.ts';

const LETTER_WORDS: Readonly<Record<string, string>> = {
  A: 'Alfa',
  B: 'Bravo',
  C: 'Charlie',
  D: 'Delta',
  E: 'Echo',
  F: 'Foxtrot',
  G: 'Golf',
  H: 'Hotel',
  I: 'India',
  J: 'Juliett',
  K: 'Kilo',
  L: 'Lima',
  M: 'Mike',
  N: 'November',
  O: 'Oscar',
  P: 'Papa',
  Q: 'Quebec',
  R: 'Romeo',
  S: 'Sierra',
  T: 'Tango',
  U: 'Uniform',
  V: 'Victor',
  W: 'Whiskey',
  X: 'Xray',
  Y: 'Yankee',
  Z: 'Zulu',
};

/**
 * An ident spelled in the radio-telephony alphabet: QEV -> "Quebec Echo Victor".
 *
 * Letters of either case; figures as their words ("niner" for 9). Anything else has no word and is
 * left out, so an empty or unreadable ident gives an empty text.
 * *Source:* AIM table 4-2-2 (the ICAO/ITU alphabet).
 */
export function phonetic(ident: string): string {
  return Array.from(ident.toUpperCase())
    .map((each) => LETTER_WORDS[each] ?? figuresSpoken(each))
    .filter((each) => each !== '')
    .join(' ');
}
