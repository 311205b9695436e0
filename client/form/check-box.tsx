import type { JSX } from 'preact';

interface CheckBoxProps {
  readonly label: string;
  readonly value: boolean;
  readonly onChange: (value: boolean) => void;
}

/** Something that is so or not. */
export function CheckBox({ label, value, onChange }: CheckBoxProps): JSX.Element {
  return (
    <label class="check">
      <input
        type="checkbox"
        checked={value}
        onChange={(box) => {
          onChange(box.currentTarget.checked);
        }}
      />
      {label}
    </label>
  );
}
