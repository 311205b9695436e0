import { speaker } from '../voice/speaker.ts';
import { checkDone, clearDraft, explain, giveShown, undoLast } from './actions.ts';
import type { Deck } from './deck.ts';
import type { SingleKey } from './single-keys.ts';

/** The single keys of the Fly page. */
export function flyKeys(deck: Deck): readonly SingleKey[] {
  const nudge = (halfDots: 1 | -1): void => {
    const { shown, given } = deck.draft;
    const full = deck.state.peek().plan?.aircraft.dotsFullScale ?? 5;
    const next = (shown.peek().needleDots ?? 0) + halfDots / 2;
    given.value = { ...given.peek(), needleDots: Math.max(-full, Math.min(full, next)) };
  };
  return [
    { key: 'g', name: 'G', does: 'give the reading', act: () => void giveShown(deck) },
    {
      key: 'arrowleft',
      name: '←',
      does: 'needle half a dot left',
      act: () => {
        nudge(-1);
      },
    },
    {
      key: 'arrowright',
      name: '→',
      does: 'needle half a dot right',
      act: () => {
        nudge(1);
      },
    },
    {
      key: 'a',
      name: 'A',
      does: 'say again',
      act: () => {
        speaker.sayAgain();
      },
    },
    {
      key: 'w',
      name: 'W',
      does: 'why',
      act: () => {
        explain(deck);
      },
    },
    { key: 'n', name: 'N', does: 'next item of the checklist', act: () => void checkDone(deck) },
    { key: 'u', name: 'U', does: 'undo', act: () => void undoLast(deck) },
    {
      key: 'c',
      name: 'C',
      does: 'clear the values: back to what is expected',
      act: () => {
        clearDraft(deck);
      },
    },
    {
      key: 't',
      name: 'T',
      does: 'type a sentence',
      act: () => document.getElementById('sentence')?.focus(),
    },
  ];
}
