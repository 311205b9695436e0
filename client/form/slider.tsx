import type { JSX } from 'preact';

interface SliderProps {
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly show: (value: number) => string;
  readonly onChange: (value: number) => void;
}

/** A value between two ends, to be slid; how much it is stands beside its name. */
export function Slider(props: SliderProps): JSX.Element {
  return (
    <div class="field">
      <label for={props.id}>
        {props.label} <span class="soft">{props.show(props.value)}</span>
      </label>
      <input
        id={props.id}
        type="range"
        min={props.low}
        max={props.high}
        step={props.step}
        value={props.value}
        aria-valuetext={props.show(props.value)}
        onInput={(input) => {
          props.onChange(Number(input.currentTarget.value));
        }}
      />
    </div>
  );
}
