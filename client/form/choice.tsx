import type { JSX } from 'preact';

interface ChoiceProps<Word extends string> {
  /** Of the group, on the whole page. */
  readonly name: string;
  readonly label: string;
  readonly value: Word;
  /** What stands for each, in the order in which they are shown. */
  readonly words: Readonly<Record<Word, string>>;
  readonly onChange: (word: Word) => void;
}

/** One of a few, all in sight. */
export function Choice<Word extends string>(props: ChoiceProps<Word>): JSX.Element {
  return (
    <fieldset class="field">
      <legend>{props.label}</legend>
      <div class="choice">
        {(Object.keys(props.words) as Word[]).map((word) => (
          <label key={word} class={word === props.value ? 'on' : ''}>
            <input
              type="radio"
              name={props.name}
              checked={word === props.value}
              onChange={() => {
                props.onChange(word);
              }}
            />
            {props.words[word]}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
