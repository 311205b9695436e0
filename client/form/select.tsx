import type { ComponentChildren, JSX } from 'preact';

interface SelectProps<Value extends string> {
  readonly id: string;
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly name: string }[];
  readonly onChange: (value: Value) => void;
  readonly hint?: ComponentChildren;
  /** The hint says what is wrong with it. */
  readonly isWrong?: boolean;
  /** It takes the whole width of the form. */
  readonly isWide?: boolean;
}

/** One of many, or one with a long name. */
export function Select<Value extends string>(props: SelectProps<Value>): JSX.Element {
  const { id, label, value, options, hint, isWrong = false } = props;
  return (
    <div class={`field${isWrong ? ' wrong' : ''}${props.isWide === true ? ' wide' : ''}`}>
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        {...(hint === undefined ? {} : { 'aria-describedby': `${id}-about` })}
        onChange={(change) => {
          const chosen = options[change.currentTarget.selectedIndex];
          if (chosen !== undefined) props.onChange(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.name}
          </option>
        ))}
      </select>
      {hint === undefined ? null : (
        <p id={`${id}-about`} class={isWrong ? 'hint problem' : 'hint'}>
          {hint}
        </p>
      )}
    </div>
  );
}
