import type { JSX } from 'preact';
import type { Deck } from './deck.ts';
import { timeOfDay } from './figures.ts';
import { LegCard } from './leg-card.tsx';
import { addressOf } from './route.ts';

/** After the flight: the card with all readings, to look at or print; a slip of the finger can be undone. */
export function FlightFinished({ deck }: { readonly deck: Deck }): JSX.Element {
  const { finishedAtMs, undoable } = deck.state.value;
  return (
    <main class="plain">
      <h1 tabIndex={-1}>
        Flight finished{finishedAtMs === null ? '' : ` at ${timeOfDay(finishedAtMs)} UTC`}
      </h1>
      <div class="row wrap no-print">
        <button
          type="button"
          class="main"
          onClick={() => {
            print();
          }}
        >
          Print
        </button>
        <a class="button" href={addressOf({ page: 'flights' })}>
          All flights
        </a>
        {undoable === null ? null : (
          <button
            type="button"
            onClick={() => void deck.record({ kind: 'taken-back', eventId: undoable.eventId })}
          >
            Undo: {undoable.what}
          </button>
        )}
      </div>
      <p class="problem" role="alert">
        {deck.problem.value}
      </p>
      <LegCard deck={deck} isOnScreen />
    </main>
  );
}
