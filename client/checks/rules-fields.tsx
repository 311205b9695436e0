import type { JSX } from 'preact';
import { Field } from '../parts/field.tsx';
import type { CheckDraft, CheckFieldsProps } from './check-draft.ts';

const STATES = [
  { state: 'us', name: 'United States, 14 CFR 91.171' },
  { state: 'canada', name: 'Canada' },
  { state: 'own', name: 'Own figures' },
] as const;

const ABOUT: Readonly<Record<CheckDraft['state'], string>> = {
  us: '4° on the ground, by test signal and between two; 6° in the air; 30 days; for IFR.',
  canada:
    '4° at a checkpoint (its DME within 0.5 NM too) and between two, 6° in the air: at second hand. Nothing here for a test signal or for how long.',
  own: 'From the rules that you fly by.',
};

/** By whose rule it is judged; figures of the pilot's own where another state's apply. */
export function RulesFields({ draft, problems, put }: CheckFieldsProps): JSX.Element {
  return (
    <>
      <div class="field kind">
        <label for="check-rules">Judged by</label>
        <select
          id="check-rules"
          value={draft.state}
          aria-describedby="check-rules-about"
          onChange={(change) => {
            put({ state: change.currentTarget.value as CheckDraft['state'] });
          }}
        >
          {STATES.map(({ state, name }) => (
            <option key={state} value={state}>
              {name}
            </option>
          ))}
        </select>
        <p id="check-rules-about" class="hint">
          {ABOUT[draft.state]} <b>Check your own regulation.</b>
        </p>
      </div>
      {draft.state === 'own' ? (
        <>
          <Field
            name="permittedDeg"
            label="Error permitted"
            unit="°"
            isNumber
            value={draft.ownDeg}
            problems={problems}
            onInput={(ownDeg) => {
              put({ ownDeg });
            }}
          />
          <Field
            name="validDays"
            label="Stands for"
            unit="days"
            isNumber
            value={draft.ownDays}
            problems={problems}
            onInput={(ownDays) => {
              put({ ownDays });
            }}
          />
        </>
      ) : null}
    </>
  );
}
