import type { JSX } from 'preact';
import { clearDraft, giveShown } from './actions.ts';
import type { Deck } from './deck.ts';

/**
 * The two buttons that give the reading: always in the same places, the likelier one filled. Once a
 * value has been touched, the left one lets all values follow what is expected again. Nothing is as expected
 * where nothing is foreseen or something does not fit, nor where the flag should have changed: that has to be read.
 */
export function GiveRow({ deck }: { readonly deck: Deck }): JSX.Element {
  const isTouched = Object.keys(deck.draft.given.value).length > 0;
  const isCorrecting = deck.draft.correcting.value !== null;
  const { isForeseen, mustReadFlag } = deck.draft.expected.value;
  const isAsExpected = isForeseen && !mustReadFlag && !isTouched && !isCorrecting;
  const clearName = isCorrecting ? 'Leave it' : 'Clear';
  return (
    <div class="give-row">
      {isTouched || isCorrecting ? (
        <button
          type="button"
          onClick={() => {
            clearDraft(deck);
          }}
        >
          {clearName}
        </button>
      ) : (
        <button
          type="button"
          class={isAsExpected ? 'main' : ''}
          disabled={!isAsExpected}
          onClick={() => void giveShown(deck)}
        >
          As expected
        </button>
      )}
      <button type="button" class={isAsExpected ? '' : 'main'} onClick={() => void giveShown(deck)}>
        {isCorrecting ? 'Correct it' : 'Give reading'}
      </button>
    </div>
  );
}
