import type { Manner } from '../../src/speech/numbers.ts';
import { settings } from '../settings/settings.ts';
import { speaker } from '../voice/speaker.ts';

/** Says words of the plan in the pilot's manner of speaking. */
export function readOut(wordsIn: (manner: Manner) => string): void {
  const words = wordsIn({ decimalWord: settings.peek().decimalWord });
  speaker.say(words, { channel: 'answer' });
}
