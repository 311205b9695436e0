import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { CHECK_KINDS, type ReceiverCheck } from '../../src/station/library/receiver-check.ts';
import { nowMs } from '../parts/clock.ts';
import { boundTo } from '../form/bound.ts';
import { Choice } from '../form/choice.tsx';
import { useDraft } from '../form/draft.ts';
import { Field } from '../form/field.tsx';
import { KeptForm } from '../form/kept-form.tsx';
import { Select } from '../form/select.tsx';
import {
  draftAfter,
  isFailingSoFar,
  outcomeSoFar,
  readCheck,
  type CheckFieldsProps,
} from './check-draft.ts';
import { KIND_WORDS } from './check-words.ts';
import { RulesFields } from './rules-fields.tsx';

interface CheckFormProps {
  /** The check before this one; what seldom changes is taken from it. */
  readonly last: ReceiverCheck | undefined;
  /** Rejects when it could not be kept. */
  readonly onKeep: (check: ReceiverCheck) => Promise<void>;
  readonly onLeave: () => void;
}

/** One check of a receiver, written down as it is made; what it comes to is told as it is typed. */
export function CheckForm({ last, onKeep, onLeave }: CheckFormProps): JSX.Element {
  const { draft, put, problems, tell } = useDraft(() => draftAfter(last, nowMs.peek()));
  const [notKept, setNotKept] = useState('');
  const keep = (): void => {
    const read = readCheck(draft, nowMs.peek());
    tell(read.ok ? [] : read.problem);
    setNotKept('');
    if (!read.ok) return;
    onKeep(read.value).catch(() => {
      setNotKept('This device did not keep it: is its storage full?');
    });
  };
  return (
    <KeptForm onKeep={keep} onLeave={onLeave}>
      <KindField draft={draft} put={put} />
      <div class="fields">
        <PlaceFields draft={draft} problems={problems} put={put} />
        <BearingFields draft={draft} problems={problems} put={put} />
        <RulesFields draft={draft} problems={problems} put={put} />
      </div>
      <p role="status" class={isFailingSoFar(draft) ? 'act' : ''}>
        {outcomeSoFar(draft)}
      </p>
      <p class="problem" role="alert">
        {notKept}
      </p>
    </KeptForm>
  );
}

function KindField({ draft, put }: Omit<CheckFieldsProps, 'problems'>): JSX.Element {
  return (
    <Select
      {...boundTo(draft, put)('kind')}
      id="check-kind"
      label="Kind"
      options={CHECK_KINDS.map((kind) => ({ value: kind, name: KIND_WORDS[kind].name }))}
      hint={KIND_WORDS[draft.kind].how}
      isWide
    />
  );
}

function PlaceFields({ draft, problems, put }: CheckFieldsProps): JSX.Element {
  const of = boundTo(draft, put, problems);
  return (
    <>
      <Field {...of('date')} name="dateIso" label="Date" unit="UTC" isDate />
      <Field {...of('time')} name="timeUtc" label="Time" unit="UTC" hint="14:05" />
      <Field {...of('place')} name="place" label="Place" hint="Airport, checkpoint, landmark" />
      <Field
        {...of('station')}
        name="station"
        label={draft.kind === 'test-signal' ? 'Test signal' : 'Station'}
        hint={draft.kind === 'test-signal' ? 'VOT 108.0' : 'QEV 113.35'}
      />
      <Field {...of('aircraft')} name="aircraft" label="Aircraft" hint="If there are several" />
      <Field {...of('who')} name="who" label="Who made it" hint="Name, or name and licence" />
    </>
  );
}

function BearingFields({ draft, problems, put }: CheckFieldsProps): JSX.Element {
  const of = boundTo(draft, put, problems);
  const isTwo = draft.kind === 'two-receivers';
  const receiver = <Field {...of('receiver')} name="receiver" label="Receiver" hint="No. 1" />;
  const indicated = (
    <Field
      {...of('indicated')}
      name="indicatedDeg"
      label={isTwo ? 'This one shows' : 'Bearing indicated'}
      unit="°"
      isNumber
      hint="Needle centred: what the OBS reads"
    />
  );
  if (isTwo)
    return (
      <>
        {receiver}
        {indicated}
        <Field {...of('otherReceiver')} name="otherReceiver" label="Held against" hint="No. 2" />
        <Field
          {...of('expected')}
          name="expectedDeg"
          label="The other shows"
          unit="°"
          isNumber
          hint="Both TO, or both FROM"
        />
      </>
    );
  return (
    <>
      {receiver}
      {draft.kind === 'test-signal' ? (
        <FlagField draft={draft} put={put} />
      ) : (
        <Field
          {...of('expected')}
          name="expectedDeg"
          label="Bearing expected"
          unit="°"
          isNumber
          hint="As published for the point"
        />
      )}
      {indicated}
    </>
  );
}

function FlagField({ draft, put }: Omit<CheckFieldsProps, 'problems'>): JSX.Element {
  return (
    <Choice
      name="check-flag"
      label="Flag"
      {...boundTo(draft, put)('flag')}
      words={{ from: 'FROM, 0', to: 'TO, 180' }}
    />
  );
}
