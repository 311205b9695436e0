import { NO, took } from './grammar.ts';
import type { Parse } from './grammar.ts';
import type { Command } from './heard.ts';
import type { Token } from './tokens.ts';
import { wordsAt } from './tokens.ts';

/** The words that each command is answered with; the long form is the one to teach. */
export const COMMAND_TEXT: Readonly<Record<Command, string>> = {
  'how-far': 'how far to go',
  'which-way': 'which way to turn',
  'say-again': 'say again',
  'next-step': 'next step',
  'ident-confirmed': 'ident confirmed',
  correction: 'correction',
  why: 'why',
};

/** What may be said for each command, longer forms before shorter ones. */
const PHRASES: readonly (readonly [phrase: string, command: Command])[] = [
  ['how far to go', 'how-far'],
  ['how far to', 'how-far'],
  ['how far', 'how-far'],
  ['which way to turn', 'which-way'],
  ['which way to', 'which-way'],
  ['which way', 'which-way'],
  ['say again', 'say-again'],
  ['next step', 'next-step'],
  ['next', 'next-step'],
  ['ident confirmed', 'ident-confirmed'],
  ['ident is confirmed', 'ident-confirmed'],
  ['correction', 'correction'],
  ['why', 'why'],
];

/** "how far to go", "say again", "why" and the other commands, with their short forms. */
export function commandPhraseAt(tokens: readonly Token[], at: number): Parse {
  for (const [phrase, command] of PHRASES) {
    const words = phrase.split(' ');
    if (wordsAt(tokens, at, words)) {
      return took({ text: COMMAND_TEXT[command], command }, at + words.length);
    }
  }
  return NO;
}
