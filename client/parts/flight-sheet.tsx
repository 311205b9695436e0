import type { JSX } from 'preact';
import { CheckBox } from '../form/check-box.tsx';
import { finishFlight } from './actions.ts';
import type { Deck } from './deck.ts';
import { flyKeys } from './fly-keys.ts';
import { Notes } from './notes.tsx';
import { NextLeg } from './next-leg.tsx';
import { addressOf } from './route.ts';
import { Sheet } from './sheet.tsx';
import { areSingleKeysOn } from './single-keys.ts';

/** What is not needed every minute: notes, a second screen, the keys, printing, the end of the flight. */
export function FlightSheet({ deck }: { readonly deck: Deck }): JSX.Element {
  const { state, store } = deck;
  const isFinished = state.value.finishedAtMs !== null;
  const close = (): void => {
    deck.sheet.value = null;
  };
  const finish = async (): Promise<void> => {
    if (await finishFlight(deck)) close();
  };
  return (
    <Sheet title={state.value.plan?.name ?? 'This flight'} onClose={close}>
      <div class="stack">
        <h3>Notes</h3>
        <Notes deck={deck} />
        <p class="problem" role="alert">
          {deck.problem.value}
        </p>
        <h3>A second screen</h3>
        <p>
          Open this address on another screen that reaches the same server: it follows this flight
          as it goes.
        </p>
        <p class="address">{`${location.origin}${location.pathname}${addressOf({ page: 'fly', flightId: store.id })}`}</p>
        <h3>Keys</h3>
        <CheckBox
          label="Single keys work on this page (never while you type)"
          value={areSingleKeysOn.value}
          onChange={(areOn) => {
            areSingleKeysOn.value = areOn;
          }}
        />
        <dl class="keys">
          {flyKeys(deck).map((each) => (
            <div key={each.key}>
              <dt>
                <kbd>{each.name}</kbd>
              </dt>
              <dd>{each.does}</dd>
            </div>
          ))}
        </dl>
        <h3>The flight</h3>
        <div class="row wrap">
          {isFinished ? null : <NextLeg deck={deck} isLarge={false} onBegun={close} />}
          <button
            type="button"
            onClick={() => {
              print();
            }}
          >
            Print card and readings
          </button>
          <a class="button" href={addressOf({ page: 'flights' })}>
            All flights
          </a>
          {isFinished ? null : (
            <button type="button" class="main" onClick={() => void finish()}>
              Finish the flight
            </button>
          )}
        </div>
      </div>
    </Sheet>
  );
}
