import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { isIdent } from '../../src/ident/morse.ts';
import { ListenPanel } from '../listen/listen-panel.tsx';
import { Field } from '../form/field.tsx';

const NO_PROBLEMS: ReadonlyMap<string, string> = new Map();

/** The tool listens to the receiver, by microphone or from a recording, and says which ident it hears. */
export function ListenSection(): JSX.Element {
  const [typed, setTyped] = useState('');
  const text = typed.trim().toUpperCase();
  const isWrong = text !== '' && !isIdent(text);
  return (
    <section class="stack" aria-labelledby="listen-title">
      <h2 id="listen-title">The tool listens</h2>
      <p>
        Hold the microphone to the headset or the speaker, with the receiver’s ident turned up. Or
        drop a recording (WAV) anywhere on this page. Nothing of it leaves this device.
      </p>
      <div class="fields">
        <Field
          name="expected"
          label="Ident on the chart"
          value={typed}
          onChange={setTyped}
          problems={
            isWrong ? new Map([['expected', '1 to 4 letters, as on the chart']]) : NO_PROBLEMS
          }
          hint="Left empty: the tool says what it hears, without a verdict."
        />
      </div>
      <ListenPanel expected={text === '' || isWrong ? null : text} />
    </section>
  );
}
