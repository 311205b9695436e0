import type { JSX } from 'preact';
import { lettersLike } from '../../src/ident/look-up.ts';

/** One letter as far as it is keyed. */
export interface KeyedLetter {
  /** `.`, `-`, or `?` for one that was not made out. */
  readonly pattern: string;
  /** The likeliest elements, where `pattern` has a `?`: the same length. */
  readonly likeliest: string;
  /** True while more of it may come. */
  readonly isOpen: boolean;
}

const LETTERS_SHOWN = 6;

/** What was keyed so far: its elements, those in doubt hollow, and the letters that it may be. */
export function KeyedLetters({
  letters,
}: {
  readonly letters: readonly KeyedLetter[];
}): JSX.Element {
  if (letters.length === 0) return <p class="soft keyed-none">Nothing keyed yet.</p>;
  return (
    <ol class="keyed-letters" aria-live="polite" aria-label="Keyed so far">
      {letters.map((letter, index) => (
        <li key={index}>
          <KeyedElements letter={letter} />
          <span class="may-be">{mayBe(letter)}</span>
        </li>
      ))}
    </ol>
  );
}

const WORDS: Readonly<Record<string, string>> = { '.': 'dot', '-': 'dash', '?': 'not made out' };

function KeyedElements({ letter }: { readonly letter: KeyedLetter }): JSX.Element {
  const { pattern, likeliest } = letter;
  const words = Array.from(pattern, (each) => WORDS[each] ?? '').join(' ');
  return (
    <span class="keyed-elements" role="img" aria-label={words}>
      {Array.from(pattern, (each, index) => {
        const shown = each === '?' ? likeliest.charAt(index) : each;
        const shape = shown === '.' ? 'dot' : shown === '-' ? 'dash' : 'either';
        return <span key={index} class={`keyed ${shape}${each === '?' ? ' unsure' : ''}`} />;
      })}
    </span>
  );
}

function mayBe({ pattern, isOpen }: KeyedLetter): string {
  const exact = lettersLike(pattern, false);
  const longer = isOpen ? lettersLike(pattern, true).filter((each) => !exact.includes(each)) : [];
  const all = [...exact, ...longer];
  if (all.length === 0) return 'no letter';
  const shown = all.slice(0, LETTERS_SHOWN).join(' ');
  return all.length > LETTERS_SHOWN ? `${shown} …` : shown;
}
