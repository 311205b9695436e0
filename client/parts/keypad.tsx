import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { Sheet } from './sheet.tsx';

interface KeypadProps {
  readonly title: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly hasDecimal: boolean;
  /** Null: nothing was read. Left out where a value must stand. */
  readonly onNotRead?: () => void;
  readonly onSet: (value: number) => void;
  readonly onClose: () => void;
}

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];

/** Large digits for one figure. Digits of the keyboard work as well; Enter sets. */
export function Keypad(props: KeypadProps): JSX.Element {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState('');
  const type = (key: string): void => {
    setProblem('');
    setText((before) => {
      if (key === 'back') return before.slice(0, -1);
      if (key === '.' && (!props.hasDecimal || before.includes('.'))) return before;
      return before.length < 5 ? before + key : before;
    });
  };
  const set = (): void => {
    const value = Number(text);
    if (text === '' || !(value >= props.low && value <= props.high)) {
      setProblem(`${props.low} to ${props.high} ${props.unit}, please.`);
      return;
    }
    props.onSet(value);
  };
  const onKeyDown = (key: KeyboardEvent): void => {
    if (/^[0-9.]$/.test(key.key)) type(key.key);
    else if (key.key === 'Backspace') type('back');
    else if (key.key === 'Enter' && !(key.target instanceof HTMLButtonElement)) set();
    else return;
    key.preventDefault();
  };
  return (
    <Sheet title={props.title} onClose={props.onClose} onKeyDown={onKeyDown}>
      <div class="keypad">
        <output class="keypad-figure" aria-label={props.title} tabIndex={-1} autofocus>
          {text === '' ? '–' : text} <span class="soft">{props.unit}</span>
        </output>
        <p class="problem" role="alert">
          {problem}
        </p>
        <div class="keypad-keys">
          {DIGITS.map((digit) => (
            <button
              key={digit}
              type="button"
              onClick={() => {
                type(digit);
              }}
            >
              {digit}
            </button>
          ))}
          <button
            type="button"
            disabled={!props.hasDecimal}
            onClick={() => {
              type('.');
            }}
            aria-label="decimal"
          >
            .
          </button>
          <button
            type="button"
            onClick={() => {
              type('0');
            }}
          >
            0
          </button>
          <button
            type="button"
            aria-label="Rub out the last figure"
            onClick={() => {
              type('back');
            }}
          >
            ⌫
          </button>
        </div>
        <div class="row">
          {props.onNotRead === undefined ? null : (
            <button type="button" onClick={props.onNotRead}>
              Not read
            </button>
          )}
          <button type="button" class="main" onClick={set}>
            Set
          </button>
        </div>
      </div>
    </Sheet>
  );
}
