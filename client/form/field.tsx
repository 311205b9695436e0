import type { JSX } from 'preact';
import type { Problems } from './bound.ts';

interface FieldProps {
  /** Dotted path, as in the problems. */
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly problems?: Problems;
  readonly hint?: string;
  readonly unit?: string;
  readonly isDate?: boolean;
  readonly isNumber?: boolean;
}

/** One typed field; what is wrong with it stands beside it. */
export function Field(props: FieldProps): JSX.Element {
  const { name, label, value, hint, unit } = props;
  const id = idOf(name);
  const problem = props.problems?.get(name);
  const shared = {
    id,
    value,
    autocomplete: 'off',
    'aria-invalid': problem !== undefined,
    'aria-describedby': `${id}-about`,
    onInput: (input: { readonly currentTarget: HTMLInputElement }) => {
      props.onChange(input.currentTarget.value);
    },
  } as const;
  return (
    <div class={problem === undefined ? 'field' : 'field wrong'}>
      <label for={id}>
        {label}
        {unit === undefined ? null : <span class="soft"> {unit}</span>}
      </label>
      {props.isDate === true ? (
        <input {...shared} type="date" />
      ) : (
        <input
          {...shared}
          type="text"
          inputmode={props.isNumber === true ? 'decimal' : 'text'}
          spellcheck={false}
        />
      )}
      <p id={`${id}-about`} class={problem === undefined ? 'hint' : 'hint problem'}>
        {problem ?? hint}
      </p>
    </div>
  );
}

/** The id of a field's input, for its label and for the focus. */
function idOf(name: string): string {
  return `field-${name.replaceAll('.', '-')}`;
}

/** Takes the focus to the first field on the page that is wrong. */
export function focusFirstProblem(): void {
  // The page has to draw the problems first.
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  });
}
