import type { JSX } from 'preact';
import { boundTo } from '../form/bound.ts';
import { Field } from '../form/field.tsx';
import { Select } from '../form/select.tsx';
import type { CheckDraft, CheckFieldsProps } from './check-draft.ts';

const STATES = [
  { value: 'us', name: 'United States, 14 CFR 91.171' },
  { value: 'canada', name: 'Canada' },
  { value: 'own', name: 'Own figures' },
] as const;

const ABOUT: Readonly<Record<CheckDraft['state'], string>> = {
  us: '4° on the ground, by test signal and between two; 6° in the air; 30 days; for IFR.',
  canada:
    '4° at a checkpoint (its DME within 0.5 NM too) and between two, 6° in the air: at second hand. Nothing here for a test signal or for how long.',
  own: 'From the rules that you fly by.',
};

/** By whose rule it is judged; figures of the pilot's own where another state's apply. */
export function RulesFields({ draft, problems, put }: CheckFieldsProps): JSX.Element {
  const of = boundTo(draft, put, problems);
  return (
    <>
      <Select
        {...of('state')}
        id="check-rules"
        label="Judged by"
        options={STATES}
        hint={
          <>
            {ABOUT[draft.state]} <b>Check your own regulation.</b>
          </>
        }
        isWide
      />
      {draft.state === 'own' ? (
        <>
          <Field {...of('ownDeg')} name="permittedDeg" label="Error permitted" unit="°" isNumber />
          <Field {...of('ownDays')} name="validDays" label="Stands for" unit="days" isNumber />
        </>
      ) : null}
    </>
  );
}
