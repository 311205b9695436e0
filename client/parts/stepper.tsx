import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { Keypad } from './keypad.tsx';

interface StepperProps {
  readonly label: string;
  readonly unit: string;
  /** Null: not read. */
  readonly value: number | null;
  /** Where − and + start from when nothing stands there yet. */
  readonly startAt: number;
  readonly show: (value: number) => string;
  /** What the tool expects, in figures; null: it expects nothing. */
  readonly expected: string | null;
  /** The pilot has put the value there: it no longer follows what is expected. */
  readonly isGiven: boolean;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly wraps?: boolean;
  readonly onChange: (value: number | null) => void;
}

const FIRST_REPEAT_MS = 450;
const REPEAT_MS = 110;

/** One figure with − and +; a finger that stays repeats; a tap on the figure opens the keypad. */
export function Stepper(props: StepperProps): JSX.Element {
  const [isTyping, setTyping] = useState(false);
  const latest = useRef(props);
  latest.current = props;
  const stepBy = (direction: 1 | -1): void => {
    latest.current.onChange(stepped(latest.current, direction));
  };
  const shown = props.value === null ? '–' : props.show(props.value);
  return (
    <div class="stepper-block" role="group" aria-label={props.label}>
      <div class="lab">
        <span>{props.label}</span>
        <span>{props.expected === null ? '' : `expected ${props.expected}`}</span>
      </div>
      <div class="stepper">
        <StepButton
          label={`${props.label} less`}
          sign="−"
          onStep={() => {
            stepBy(-1);
          }}
        />
        <div
          tabIndex={0}
          role="spinbutton"
          class={props.isGiven || props.expected === null ? 'figure' : 'figure dim'}
          aria-label={props.label}
          aria-valuenow={props.value ?? undefined}
          aria-valuemin={props.low}
          aria-valuemax={props.high}
          aria-valuetext={props.value === null ? 'not read' : `${shown} ${props.unit}`}
          onClick={() => {
            setTyping(true);
          }}
          onKeyDown={(key) => {
            if (key.key === 'ArrowUp') stepBy(1);
            else if (key.key === 'ArrowDown') stepBy(-1);
            else if (key.key === 'Enter' || key.key === ' ') setTyping(true);
            else return;
            key.preventDefault();
          }}
        >
          {shown}
        </div>
        <StepButton
          label={`${props.label} more`}
          sign="+"
          onStep={() => {
            stepBy(1);
          }}
        />
      </div>
      {isTyping ? (
        <Keypad
          title={props.label}
          unit={props.unit}
          low={props.low}
          high={props.high}
          hasDecimal={props.step < 1}
          onNotRead={() => {
            props.onChange(null);
            setTyping(false);
          }}
          onSet={(value) => {
            props.onChange(value);
            setTyping(false);
          }}
          onClose={() => {
            setTyping(false);
          }}
        />
      ) : null}
    </div>
  );
}

function stepped(props: StepperProps, direction: 1 | -1): number {
  if (props.value === null) return props.startAt;
  const next = Math.round((props.value + direction * props.step) / props.step) * props.step;
  const tidy = Number(next.toFixed(1));
  if (props.wraps === true)
    return tidy >= props.high ? tidy - props.high : tidy < 0 ? tidy + props.high : tidy;
  return Math.min(props.high, Math.max(props.low, tidy));
}

interface StepButtonProps {
  readonly label: string;
  readonly sign: string;
  readonly onStep: () => void;
}

function StepButton({ label, sign, onStep }: StepButtonProps): JSX.Element {
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const hasRepeated = useRef(false);
  const stop = (): void => {
    clearTimeout(timer.current);
  };
  useEffect(() => stop, []);
  const start = (): void => {
    hasRepeated.current = false;
    const repeat = (): void => {
      hasRepeated.current = true;
      onStep();
      timer.current = setTimeout(repeat, REPEAT_MS);
    };
    timer.current = setTimeout(repeat, FIRST_REPEAT_MS);
  };
  return (
    <button
      type="button"
      aria-label={label}
      onPointerDown={start}
      onPointerUp={stop}
      onPointerLeave={stop}
      onPointerCancel={stop}
      onContextMenu={(menu) => {
        menu.preventDefault();
      }}
      onClick={() => {
        // The click that ends a long press has been counted already.
        if (!hasRepeated.current) onStep();
        hasRepeated.current = false;
      }}
    >
      {sign}
    </button>
  );
}
