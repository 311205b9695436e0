import { accept, refuse, type FieldProblem, type Result } from '../../src/base/result.ts';
import { readNumber } from '../../src/earth/typed-angle.ts';
import { enterCheck, rulesProblems } from '../../src/station/library/enter-check.ts';
import {
  outcomeOf,
  TEST_SIGNAL_DEG,
  type CheckKind,
  type CheckRules,
  type ReceiverCheck,
} from '../../src/station/library/receiver-check.ts';
import { rulesFor } from './check-rules.ts';
import { minuteUtc, outcomeWords } from './check-words.ts';

/** A check as typed: texts, until they are read. */
export interface CheckDraft {
  readonly kind: CheckKind;
  readonly date: string;
  readonly time: string;
  readonly place: string;
  readonly station: string;
  readonly aircraft: string;
  readonly receiver: string;
  readonly otherReceiver: string;
  /** Of a test signal. */
  readonly flag: keyof typeof TEST_SIGNAL_DEG;
  readonly expected: string;
  readonly indicated: string;
  readonly who: string;
  readonly state: CheckRules['state'];
  readonly ownDeg: string;
  readonly ownDays: string;
}

/** What every part of the form works with. */
export interface CheckFieldsProps {
  readonly draft: CheckDraft;
  readonly problems: ReadonlyMap<string, string>;
  readonly put: (part: Partial<CheckDraft>) => void;
}

const FIRST = {
  kind: 'test-signal',
  aircraft: '',
  receiver: 'No. 1',
  otherReceiver: 'No. 2',
  who: '',
} as const satisfies Partial<CheckDraft>;

/** A new check, now, with what seldom changes from the last one, to be judged by the rules that were set. */
export function draftAfter(
  last: ReceiverCheck | undefined,
  nowMs: number,
  rules: CheckRules = rulesFor(last),
): CheckDraft {
  const [date = '', time = ''] = minuteUtc(nowMs).split('T');
  return {
    ...FIRST,
    ...(last === undefined ? {} : keptFrom(last)),
    ...draftOfRules(rules),
    date,
    time,
    place: '',
    station: '',
    flag: 'from',
    expected: '',
    indicated: '',
  };
}

function keptFrom({ kind, aircraft, receiver, otherReceiver, who }: ReceiverCheck) {
  return { kind, aircraft, receiver, who, otherReceiver: otherReceiver ?? FIRST.otherReceiver };
}

/** Rules as they stand in a form. */
function draftOfRules(rules: CheckRules): Pick<CheckDraft, 'state' | 'ownDeg' | 'ownDays'> {
  return rules.state === 'own'
    ? { state: 'own', ownDeg: String(rules.permittedDeg), ownDays: String(rules.validDays) }
    : { state: rules.state, ownDeg: '', ownDays: '' };
}

/** Reads the rules of a form; refuses figures that no rule has. */
export function readRules(draft: CheckDraft): Result<CheckRules> {
  const rules = rulesOf(draft);
  const problems = rulesProblems(rules);
  return problems.length === 0 ? accept(rules) : refuse(problems.map(inFormWords));
}

/** Reads a check as typed; refuses with every field that is wrong. */
export function readCheck(draft: CheckDraft, nowMs: number): Result<ReceiverCheck> {
  const read = enterCheck(asEntered(draft), minuteUtc(nowMs));
  return read.ok ? read : refuse(read.problem.map(inFormWords));
}

/** What it comes to as it is typed; empty while there is nothing to judge. */
export function outcomeSoFar(draft: CheckDraft): string {
  const { kind, expectedDeg, indicatedDeg, rules } = asEntered(draft);
  const figures = [expectedDeg, indicatedDeg];
  const isBearing = figures.every((each) => each >= 0 && each <= 360);
  const isRule = rules.state !== 'own' || rules.permittedDeg > 0;
  return isBearing && isRule ? outcomeWords({ kind, expectedDeg, indicatedDeg, rules }) : '';
}

/** Whether what is typed would fail. */
export function isFailingSoFar(draft: CheckDraft): boolean {
  return outcomeSoFar(draft) !== '' && outcomeOf(asEntered(draft)).isPassed === false;
}

function asEntered(draft: CheckDraft): ReceiverCheck {
  return {
    kind: draft.kind,
    dateIso: draft.date,
    timeUtc: draft.time,
    place: draft.place,
    station: draft.station,
    aircraft: draft.aircraft,
    receiver: draft.receiver,
    otherReceiver: draft.kind === 'two-receivers' ? draft.otherReceiver : null,
    expectedDeg:
      draft.kind === 'test-signal' ? TEST_SIGNAL_DEG[draft.flag] : readNumber(draft.expected),
    indicatedDeg: readNumber(draft.indicated),
    who: draft.who,
    rules: rulesOf(draft),
  };
}

function rulesOf({ state, ownDeg, ownDays }: CheckDraft): CheckRules {
  if (state !== 'own') return { state };
  return { state, permittedDeg: readNumber(ownDeg), validDays: readNumber(ownDays) };
}

/** A field left empty needs no figure that it is not. */
function inFormWords(problem: FieldProblem): FieldProblem {
  return problem.got.trim() === '' ? { ...problem, got: '' } : problem;
}
