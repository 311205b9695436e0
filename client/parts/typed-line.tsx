import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { Deck } from './deck.ts';
import { loadSentences } from './fly-later.ts';

/** Where a reading, a question or a command is typed as a sentence. */
export function TypedLine({ deck }: { readonly deck: Deck }): JSX.Element {
  const [problem, setProblem] = useState<string | null>(null);
  const hasDme = deck.leg.value?.station.hasDme !== false;
  const input = useRef<HTMLInputElement>(null);
  const take = async (): Promise<void> => {
    const sentence = input.current?.value.trim() ?? '';
    if (sentence === '') return;
    const takeSentence = await loadSentences().catch(() => null);
    const refused =
      takeSentence === null
        ? 'The server is gone: give the reading with the finger.'
        : await takeSentence(deck, sentence);
    setProblem(refused);
    // A sentence that was not understood stays, to be mended; so does one that has been typed meanwhile.
    if (refused === null && input.current?.value.trim() === sentence) input.current.value = '';
  };
  return (
    <form
      class="typed"
      onSubmit={(submit) => {
        submit.preventDefault();
        void take();
      }}
    >
      <input
        ref={input}
        id="sentence"
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="send"
        aria-label="Reading or question as a sentence"
        aria-describedby="sentence-problem"
        aria-invalid={problem !== null}
        placeholder={
          hasDme ? 'heading 112, half left, distance 11.2' : 'heading 112, one and a half left'
        }
        onInput={() => {
          setProblem(null);
        }}
      />
      <p id="sentence-problem" class="problem" role="alert">
        {problem}
      </p>
    </form>
  );
}
