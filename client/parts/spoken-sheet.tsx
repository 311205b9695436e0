import type { JSX } from 'preact';
import { speaker, type SpokenLine } from '../voice/speaker.ts';
import type { Deck } from './deck.ts';
import { timeOfDay } from './figures.ts';
import { Sheet } from './sheet.tsx';

const OUTCOMES: Readonly<Record<SpokenLine['outcome'], string>> = {
  waiting: 'waiting',
  speaking: 'being said',
  spoken: '',
  muted: 'not said: voice off',
  replaced: 'a newer answer took its place',
  'too-late': 'not said: it would have been late',
  'no-voice': 'not said: no voice',
};

/** Every sentence spoken on this page, as text, newest first. */
export function SpokenSheet({ deck }: { readonly deck: Deck }): JSX.Element {
  const close = (): void => {
    deck.sheet.value = null;
  };
  return (
    <Sheet title="Spoken so far" onClose={close}>
      {speaker.spoken.value.length === 0 ? <p class="soft">Nothing has been said yet.</p> : null}
      <ol class="spoken">
        {speaker.spoken.value.toReversed().map((line, index) => (
          <li key={index}>
            <b>{timeOfDay(line.atMs)}</b> {line.text}{' '}
            <span class="soft">{OUTCOMES[line.outcome]}</span>
          </li>
        ))}
      </ol>
    </Sheet>
  );
}
