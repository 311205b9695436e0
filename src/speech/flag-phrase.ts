import { NO, SHOWS, refused, took } from './grammar.ts';
import type { Parse } from './grammar.ts';
import type { HeardFlag } from './heard.ts';
import { flagPhrase } from './read-back.ts';
import type { Token } from './tokens.ts';
import { skipWords, wordAt } from './tokens.ts';

const FLAG_OF_WORD: ReadonlyMap<string, HeardFlag> = new Map<string, HeardFlag>(
  Object.entries({ to: 'to', from: 'from', off: 'off' }),
);

/** "flag to", "flag shows off", "from"; the word "flag" may be left out. */
export function flagPhraseAt(tokens: readonly Token[], at: number): Parse {
  const isNamed = wordAt(tokens, at) === 'flag';
  const from = isNamed ? skipWords(tokens, at + 1, SHOWS) : at;
  const flag = FLAG_OF_WORD.get(wordAt(tokens, from));
  if (flag !== undefined) return took({ text: flagPhrase(flag), reading: { flag } }, from + 1);
  return isNamed ? refused('flag: to, from or off?') : NO;
}
