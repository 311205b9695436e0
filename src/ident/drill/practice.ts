import type { About, Answer, Pace, PracticeEvent, Question } from './event.ts';
import { judge, type Judgement } from './judge.ts';
import { afterAnswer, isMastered, NEW_LETTER, type LetterStrength } from './letter-strength.ts';
import { LETTER_GROUPS } from './letters.ts';
import { withAnswer, type PairCounts } from './pairs.ts';
import {
  answerOn,
  NOISE_STEPS,
  startStaircase,
  thresholdDb,
  VOICE_STEPS,
  type Staircase,
} from './staircase.ts';

/** A question with its answer. */
export interface Answered {
  /** Id of the question. */
  readonly id: string;
  readonly question: Question;
  readonly answer: Answer;
  readonly judgement: Judgement;
  readonly atMs: number;
  readonly tookS: number;
}

/** One session of practice. */
export interface Session {
  readonly id: string;
  readonly startedAtMs: number;
  readonly about: About;
  readonly pace: Pace;
  readonly length: number;
  readonly answered: readonly Answered[];
  /** The question that waits for its answer. */
  readonly open: { readonly id: string; readonly question: Question } | null;
  readonly isEnded: boolean;
  /** How many sessions of at least ten answers went before it. */
  readonly practisedBefore: number;
  /** Threshold in noise as it stood after its last answer, decibels; null: not known yet. */
  readonly thresholdDb: number | null;
}

/** What the practice log comes to. */
export interface Practice {
  readonly letters: ReadonlyMap<string, LetterStrength>;
  readonly pairs: PairCounts;
  /** How many groups of letters are taken up, from 1. */
  readonly groups: number;
  readonly noise: Staircase;
  readonly voice: Staircase;
  readonly sessions: readonly Session[];
  /** How many questions were answered in all. */
  readonly answers: number;
}

/** Right and within this time of the end of the sound, heard once: known, not worked out. */
const FAST_S = 2;

const PRACTISED_ANSWERS = 10;

/** A pilot who has not practised yet. */
export const NO_PRACTICE: Practice = {
  letters: new Map(),
  pairs: new Map(),
  groups: 1,
  noise: startStaircase(NOISE_STEPS),
  voice: startStaircase(VOICE_STEPS),
  sessions: [],
  answers: 0,
};

/**
 * What a practice log comes to. In any order, twice over or from two devices: the same events give the
 * same practice.
 */
export function practiceOf(events: readonly PracticeEvent[]): Practice {
  return inOrder(events).reduce(withEvent, NO_PRACTICE);
}

/** The events by time, then id, each once. */
export function inOrder(events: readonly PracticeEvent[]): readonly PracticeEvent[] {
  const each = new Map(events.map((event) => [event.id, event]));
  return [...each.values()].sort(
    (one, other) => one.atMs - other.atMs || (one.id < other.id ? -1 : 1),
  );
}

/** The practice after one more event, which is not earlier than those before. */
export function withEvent(practice: Practice, event: PracticeEvent): Practice {
  switch (event.kind) {
    case 'started':
      return withSession(practice, event);
    case 'asked': {
      const { id, question } = event;
      return inSession(practice, (session) => ({ ...session, open: { id, question } }));
    }
    case 'answered':
      return withAnswerTo(practice, event);
    case 'ended':
      return inSession(practice, (session) => ({ ...session, open: null, isEnded: true }));
    case 'opened':
      return { ...practice, groups: Math.max(practice.groups, event.groups) };
  }
}

function withSession(
  practice: Practice,
  { id, atMs, about, pace, length }: Extract<PracticeEvent, { kind: 'started' }>,
): Practice {
  const ended = practice.sessions.map((each) => ({ ...each, open: null, isEnded: true }));
  const practisedBefore = ended.filter((each) => each.answered.length >= PRACTISED_ANSWERS).length;
  const session: Session = {
    id,
    startedAtMs: atMs,
    about,
    pace,
    length,
    answered: [],
    open: null,
    isEnded: false,
    practisedBefore,
    thresholdDb: thresholdDb(practice.noise),
  };
  return { ...practice, sessions: [...ended, session] };
}

function inSession(practice: Practice, change: (session: Session) => Session): Practice {
  const last = practice.sessions.at(-1);
  if (last === undefined || last.isEnded) return practice;
  return { ...practice, sessions: [...practice.sessions.slice(0, -1), change(last)] };
}

function withAnswerTo(
  practice: Practice,
  event: Extract<PracticeEvent, { kind: 'answered' }>,
): Practice {
  const open = practice.sessions.at(-1)?.open;
  // The first answer counts: another one comes from a second screen.
  if (open?.id !== event.questionId) return practice;
  const { question } = open;
  const judgement = judge(question, event.answer);
  const { answer, atMs, tookS, questionId } = event;
  const answered: Answered = { id: questionId, question, answer, judgement, atMs, tookS };
  const isFast = event.tookS < FAST_S && event.plays <= 1;
  const learned = withLetters(practice, answered, isFast);
  const noise = measured(learned.noise, answered, 'noise');
  const voice = measured(learned.voice, answered, 'voice');
  return inSession({ ...learned, noise, voice, answers: practice.answers + 1 }, (session) => ({
    ...session,
    open: null,
    answered: [...session.answered, answered],
    thresholdDb: thresholdDb(noise),
  }));
}

function measured(
  staircase: Staircase,
  { question, judgement }: Answered,
  purpose: 'noise' | 'voice',
): Staircase {
  if (question.purpose !== purpose || question.sent.kind !== 'ident') return staircase;
  const steps = purpose === 'noise' ? NOISE_STEPS : VOICE_STEPS;
  return answerOn(staircase, judgement.isRight, steps);
}

/** Noise and voice are set so that three in ten go wrong: that says little about the letters. */
function withLetters(practice: Practice, answered: Answered, isFast: boolean): Practice {
  const { question, judgement, atMs } = answered;
  if (question.purpose === 'noise' || question.purpose === 'voice') return practice;
  const isWritten = question.plate === null;
  const letters = new Map(practice.letters);
  let pairs = practice.pairs;
  for (const judged of judgement.letters) {
    if (judged.sent === null) continue;
    const isRight = judged.sent === judged.answered;
    const before = letters.get(judged.sent) ?? NEW_LETTER;
    letters.set(
      judged.sent,
      // To say yes or no is to have been given the letter: never as good as writing it down at once.
      afterAnswer(before, { atMs, isRight, isFast: isFast && isWritten, isWritten }),
    );
    if (judged.answered !== null) pairs = withAnswer(pairs, judged.sent, judged.answered);
  }
  return { ...practice, letters, pairs, groups: groupsOpen(letters, practice.groups) };
}

/** The next group is taken up when every letter of the last one is mastered. */
function groupsOpen(letters: ReadonlyMap<string, LetterStrength>, groups: number): number {
  const last = LETTER_GROUPS[groups - 1] ?? [];
  const isDone = last.every((letter) => isMastered(letters.get(letter) ?? NEW_LETTER));
  return isDone ? Math.min(LETTER_GROUPS.length, groups + 1) : groups;
}
