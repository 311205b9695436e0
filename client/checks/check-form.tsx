import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { CHECK_KINDS, type ReceiverCheck } from '../../src/station/library/receiver-check.ts';
import { nowMs } from '../parts/clock.ts';
import { Choice, Field, focusFirstProblem } from '../parts/field.tsx';
import { problemTexts } from '../parts/plan-draft.ts';
import {
  draftAfter,
  isFailingSoFar,
  outcomeSoFar,
  readCheck,
  type CheckDraft,
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
  const [draft, setDraft] = useState(() => draftAfter(last, nowMs.peek()));
  const [problems, setProblems] = useState<ReadonlyMap<string, string>>(new Map());
  const [notKept, setNotKept] = useState('');
  const put = (part: Partial<CheckDraft>): void => {
    setDraft((now) => ({ ...now, ...part }));
  };
  const keep = (): void => {
    const read = readCheck(draft, nowMs.peek());
    setProblems(read.ok ? new Map() : problemTexts(read.problem));
    setNotKept('');
    if (!read.ok) {
      focusFirstProblem();
      return;
    }
    onKeep(read.value).catch(() => {
      setNotKept('This device did not keep it: is its storage full?');
    });
  };
  return (
    <form
      novalidate
      onSubmit={(submit) => {
        submit.preventDefault();
        keep();
      }}
    >
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
      <div class="row">
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
        <button type="submit" class="main">
          Keep it
        </button>
      </div>
    </form>
  );
}

function KindField({ draft, put }: Omit<CheckFieldsProps, 'problems'>): JSX.Element {
  return (
    <div class="field kind">
      <label for="check-kind">Kind</label>
      <select
        id="check-kind"
        value={draft.kind}
        aria-describedby="check-kind-how"
        onChange={(change) => {
          put({ kind: change.currentTarget.value as CheckDraft['kind'] });
        }}
      >
        {CHECK_KINDS.map((kind) => (
          <option key={kind} value={kind}>
            {KIND_WORDS[kind].name}
          </option>
        ))}
      </select>
      <p id="check-kind-how" class="hint">
        {KIND_WORDS[draft.kind].how}
      </p>
    </div>
  );
}

function PlaceFields({ draft, problems, put }: CheckFieldsProps): JSX.Element {
  const text = (key: 'date' | 'time' | 'place' | 'station' | 'aircraft' | 'who') => ({
    value: draft[key],
    problems,
    onInput: (value: string) => {
      put({ [key]: value });
    },
  });
  return (
    <>
      <Field {...text('date')} name="dateIso" label="Date" unit="UTC" isDate />
      <Field {...text('time')} name="timeUtc" label="Time" unit="UTC" hint="14:05" />
      <Field {...text('place')} name="place" label="Place" hint="Airport, checkpoint, landmark" />
      <Field
        {...text('station')}
        name="station"
        label={draft.kind === 'test-signal' ? 'Test signal' : 'Station'}
        hint={draft.kind === 'test-signal' ? 'VOT 108.0' : 'QEV 113.35'}
      />
      <Field {...text('aircraft')} name="aircraft" label="Aircraft" hint="If there are several" />
      <Field {...text('who')} name="who" label="Who made it" hint="Name, or name and licence" />
    </>
  );
}

function BearingFields({ draft, problems, put }: CheckFieldsProps): JSX.Element {
  const text = (key: 'receiver' | 'otherReceiver' | 'expected' | 'indicated') => ({
    value: draft[key],
    problems,
    onInput: (value: string) => {
      put({ [key]: value });
    },
  });
  const isTwo = draft.kind === 'two-receivers';
  const receiver = <Field {...text('receiver')} name="receiver" label="Receiver" hint="No. 1" />;
  const indicated = (
    <Field
      {...text('indicated')}
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
        <Field {...text('otherReceiver')} name="otherReceiver" label="Held against" hint="No. 2" />
        <Field
          {...text('expected')}
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
          {...text('expected')}
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
      value={draft.flag}
      words={[
        { word: 'from', name: 'FROM, 0' },
        { word: 'to', name: 'TO, 180' },
      ]}
      onChoose={(flag) => {
        put({ flag });
      }}
    />
  );
}
