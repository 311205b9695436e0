import type { JSX } from 'preact';

interface PatternKeysProps {
  readonly text: string;
  /** Something was tapped on the pad: that can be cleared as well. */
  readonly hasPresses: boolean;
  readonly onType: (text: string) => void;
}

const KEYS: readonly { readonly adds: string; readonly shows: string; readonly name: string }[] = [
  { adds: '.', shows: '•', name: 'Dot' },
  { adds: '-', shows: '–', name: 'Dash' },
  { adds: '?', shows: '?', name: 'Not made out' },
  { adds: ' ', shows: 'Next letter', name: 'Next letter' },
];

/** Fingers tap the keys of the page; the device’s own keyboard would hide the stations. */
const isFinger = matchMedia('(pointer: coarse)').matches;

/** Dots and dashes typed, or tapped on keys. */
export function PatternKeys({ text, hasPresses, onType }: PatternKeysProps): JSX.Element {
  return (
    <div class="pattern-keys">
      <label for="pattern">Dots and dashes</label>
      <input
        id="pattern"
        type="text"
        value={text}
        placeholder="--.- . ...-"
        autocomplete="off"
        spellcheck={false}
        inputmode={isFinger ? 'none' : 'text'}
        aria-describedby="pattern-about"
        onInput={(input) => {
          onType(input.currentTarget.value);
        }}
      />
      <p class="hint" id="pattern-about">
        A point, a hyphen, ? for one not made out; a blank ends a letter.
      </p>
      <div class="row wrap">
        {KEYS.map(({ adds, shows, name }) => (
          <button
            key={name}
            type="button"
            class={adds === ' ' ? '' : 'element-key'}
            aria-label={name}
            onClick={() => {
              onType(text + adds);
            }}
          >
            {shows}
          </button>
        ))}
        <button
          type="button"
          aria-label="Rub out the last one"
          disabled={text === ''}
          onClick={() => {
            onType(text.slice(0, -1));
          }}
        >
          ⌫
        </button>
        <button
          type="button"
          disabled={text === '' && !hasPresses}
          onClick={() => {
            onType('');
          }}
        >
          Clear
        </button>
      </div>
    </div>
  );
}
