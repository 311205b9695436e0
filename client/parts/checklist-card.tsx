import type { JSX } from 'preact';
import { nextItem, type CheckLine } from '../../src/procedure/checklist.ts';
import { checkBack, checkDone, sayLine, startLeg } from './actions.ts';
import type { Deck } from './deck.ts';

/** The checklist of the leg, one item at a time: large before the leg, a strip once there is an answer. */
export function ChecklistCard({
  deck,
  isLarge,
}: {
  readonly deck: Deck;
  readonly isLarge: boolean;
}): JSX.Element | null {
  const lines = deck.lines.value;
  const line = nextItem(lines);
  const done = lines.filter((each) => each.state !== 'open').length;
  if (line === null) return isLarge ? <ReadyCard deck={deck} /> : null;
  return (
    <section class={isLarge ? 'checklist large' : 'checklist'} aria-label="Checklist">
      <p class="lab">
        <span>Before the leg</span>
        <span>
          {done + 1} of {lines.length}
        </span>
      </p>
      <p class="check-item" aria-live="polite">
        {line.show}
      </p>
      <div class="check-buttons">
        <button type="button" class="hurry main" onClick={() => void checkDone(deck)}>
          {line.needsIdent ? 'Listen' : 'Next'}
        </button>
        <button
          type="button"
          onClick={() => {
            sayLine(line);
          }}
        >
          Again
        </button>
        <button
          type="button"
          onClick={() => {
            deck.sheet.value = 'skip';
          }}
        >
          Skip
        </button>
        <button type="button" disabled={done === 0} onClick={() => void checkBack(deck)}>
          Back
        </button>
      </div>
      {isLarge ? <CheckedLines deck={deck} /> : null}
    </section>
  );
}

/** What has been done or skipped, and what comes. */
function CheckedLines({ deck }: { readonly deck: Deck }): JSX.Element {
  const due = nextItem(deck.lines.value);
  return (
    <ol class="check-list">
      {deck.lines.value.map((line) => (
        <li
          key={line.item}
          class={line === due ? 'due' : line.state}
          aria-current={line === due ? 'step' : undefined}
        >
          <span class="tick" aria-hidden="true">
            {line.state === 'done' ? '✓' : line.state === 'skipped' ? '×' : '·'}
          </span>
          <span>
            {line.show}
            {line.reason === null ? (
              <HiddenState state={line.state} />
            ) : (
              ` (skipped: ${line.reason})`
            )}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** What the mark before the line tells the eye. */
function HiddenState({ state }: { readonly state: CheckLine['state'] }): JSX.Element | null {
  return state === 'open' ? null : <span class="hidden">, {state}</span>;
}

function ReadyCard({ deck }: { readonly deck: Deck }): JSX.Element {
  const isStarted =
    typeof deck.state.value.legs[deck.state.value.legIndex]?.startedAtMs === 'number';
  return (
    <section class="checklist large" aria-label="Checklist">
      <p class="lab">
        <span>Checklist complete</span>
      </p>
      <p class="check-item">{isStarted ? 'Give the first reading' : 'Ready for the leg'}</p>
      <div class="check-buttons">
        {isStarted ? null : (
          <button type="button" class="hurry main" onClick={() => void startLeg(deck)}>
            Start the leg
          </button>
        )}
        <button type="button" onClick={() => void checkBack(deck)}>
          Back
        </button>
      </div>
      <CheckedLines deck={deck} />
    </section>
  );
}
