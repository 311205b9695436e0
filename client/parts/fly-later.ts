import { effect } from '@preact/signals';
import type { ComponentType } from 'preact';
import { hasGesture } from '../sound/gesture.ts';
import type { Deck } from './deck.ts';
import type { takeSentence } from './sentence.ts';

// What the Fly page does not need to be read: fetched with the first touch of it, or when asked for.

/** The sheets that may lie over the Fly page. */
export const loadSheets = (): Promise<ComponentType<{ readonly deck: Deck }>> =>
  import('./open-sheet.tsx').then((room) => room.OpenSheet);

/** The reader of typed sentences. */
export const loadSentences = (): Promise<typeof takeSentence> =>
  import('./sentence.ts').then((room) => room.takeSentence);

/** The card with the whole leg, for paper. */
export const loadCard = (): Promise<
  ComponentType<{ readonly deck: Deck; readonly isOnScreen: boolean }>
> => import('./leg-card.tsx').then((room) => room.LegCard);

/** What is shown of a flight that is over. */
export const loadFinished = (): Promise<ComponentType<{ readonly deck: Deck }>> =>
  import('./flight-finished.tsx').then((room) => room.FlightFinished);

/** An ident in dots and dashes: the table of the code weighs more than all else in the head of the page. */
export const loadMarks = (): Promise<ComponentType<{ readonly ident: string }>> =>
  import('./morse-marks.tsx').then((room) => room.MorseMarks);

/** Fetches all of it once the page has been touched: later the network may be gone. */
export function fetchLater(): () => void {
  return effect(() => {
    if (!hasGesture.value) return;
    // What could not be fetched is asked for again when it is needed, and says so then.
    for (const load of [loadSheets, loadSentences, loadCard, loadFinished, loadMarks])
      load().catch(() => undefined);
  });
}
