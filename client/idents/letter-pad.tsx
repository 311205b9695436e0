import type { JSX } from 'preact';
import { LETTERS } from '../../src/ident/drill/letters.ts';

interface LetterPadProps {
  readonly onLetter: (letter: string) => void;
  readonly onRubOut: () => void;
}

/** The letters to tap; the focus stays where it is, so that Enter still answers. */
export function LetterPad({ onLetter, onRubOut }: LetterPadProps): JSX.Element {
  const keepFocus = (pointer: PointerEvent): void => {
    pointer.preventDefault();
  };
  return (
    <div class="letter-pad" role="group" aria-label="Letters">
      {LETTERS.map((letter) => (
        <button
          key={letter}
          type="button"
          tabIndex={-1}
          onPointerDown={keepFocus}
          onClick={() => {
            onLetter(letter);
          }}
        >
          {letter}
        </button>
      ))}
      <button
        type="button"
        class="rub-out"
        onPointerDown={keepFocus}
        onClick={onRubOut}
        aria-label="Rub out the last letter"
      >
        ⌫
      </button>
    </div>
  );
}
