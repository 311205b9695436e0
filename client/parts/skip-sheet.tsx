import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { nextItem } from '../../src/procedure/checklist.ts';
import { checkSkipped } from './actions.ts';
import type { Deck } from './deck.ts';
import { Sheet } from './sheet.tsx';

const REASONS = ['Done before', 'Does not apply here', 'No time now'];

/** Asks why an item is left out; the reason is kept with the flight. */
export function SkipSheet({ deck }: { readonly deck: Deck }): JSX.Element {
  const own = useRef<HTMLInputElement>(null);
  const [problem, setProblem] = useState('');
  const close = (): void => {
    deck.sheet.value = null;
  };
  const skip = (reason: string): void => {
    close();
    void checkSkipped(deck, reason);
  };
  return (
    <Sheet title={`Skip: ${nextItem(deck.lines.value)?.show ?? ''}`} onClose={close}>
      <div class="stack">
        {REASONS.map((reason) => (
          <button
            key={reason}
            type="button"
            class="hurry"
            onClick={() => {
              skip(reason);
            }}
          >
            {reason}
          </button>
        ))}
        <form
          class="row reason"
          onSubmit={(submit) => {
            submit.preventDefault();
            const reason = own.current?.value.trim() ?? '';
            if (reason === '') setProblem('Say why, in a word or two.');
            else skip(reason);
          }}
        >
          <input ref={own} type="text" aria-label="Another reason" placeholder="Another reason" />
          <button type="submit">Skip</button>
        </form>
        <p class="problem" role="alert">
          {problem}
        </p>
      </div>
    </Sheet>
  );
}
