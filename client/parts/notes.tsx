import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Deck } from './deck.ts';
import { timeOfDay } from './figures.ts';

/** Remarks of the pilot: a line to type one, and those that there are. */
export function Notes({ deck }: { readonly deck: Deck }): JSX.Element {
  const [text, setText] = useState('');
  const keep = async (): Promise<void> => {
    const note = text.trim();
    // What could not be recorded stays in the line.
    if (note !== '' && (await deck.record({ kind: 'note', text: note }))) setText('');
  };
  return (
    <>
      <form
        class="row"
        onSubmit={(submit) => {
          submit.preventDefault();
          void keep();
        }}
      >
        <input
          type="text"
          class="note"
          autocomplete="off"
          enterkeyhint="done"
          maxlength={2000}
          aria-label="Note"
          placeholder="cloud below 3,000 ft to the west"
          value={text}
          onInput={(input) => {
            setText(input.currentTarget.value);
          }}
        />
        <button type="submit" disabled={text.trim() === ''}>
          Keep note
        </button>
      </form>
      <NoteList deck={deck} />
    </>
  );
}

/** The notes of the flight, oldest first. */
export function NoteList({ deck }: { readonly deck: Deck }): JSX.Element | null {
  const { notes } = deck.state.value;
  if (notes.length === 0) return null;
  return (
    <ul class="notes">
      {notes.map((note) => (
        <li key={note.eventId}>
          <b>{timeOfDay(note.atMs)}</b> {note.text}
        </li>
      ))}
    </ul>
  );
}
