import type { JSX } from 'preact';
import type { Flag } from '../../src/track/reading.ts';

interface FlagChoiceProps {
  readonly value: Flag;
  readonly onChange: (flag: Flag) => void;
}

const FLAGS: readonly { readonly flag: Flag; readonly name: string }[] = [
  { flag: 'to', name: 'TO' },
  { flag: 'from', name: 'FROM' },
  { flag: 'off', name: 'OFF' },
];

/** What the flag shows. */
export function FlagChoice({ value, onChange }: FlagChoiceProps): JSX.Element {
  return (
    <div class="choice" role="group" aria-label="Flag">
      {FLAGS.map(({ flag, name }) => (
        <button
          key={flag}
          type="button"
          class={flag === value ? 'on' : ''}
          aria-pressed={flag === value}
          onClick={() => {
            onChange(flag);
          }}
        >
          {name}
        </button>
      ))}
    </div>
  );
}
