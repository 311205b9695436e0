import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Answer } from '../../src/ident/drill/event.ts';
import { isReadyForVoice, nextQuestion } from '../../src/ident/drill/next-question.ts';
import { QUESTION_RATE_HZ } from '../../src/ident/drill/question-sound.ts';
import type { Answered, Session } from '../../src/ident/drill/practice.ts';
import { speaker } from '../voice/speaker.ts';
import type { PracticeStore } from '../store/practice-store.ts';
import { AnswerTaught } from './answer-taught.tsx';
import { channelVoice } from '../voice/channel-voice.ts';
import { QuestionCard } from './question-card.tsx';

/** Longer than any question sounds. */
const VOICE_S = 20;

interface PractiseDeskProps {
  readonly store: PracticeStore;
  readonly session: Session;
  readonly around: { readonly route: readonly string[]; readonly near: readonly string[] };
}

/** A session: question after question, each with what it teaches, until all are answered. */
export function PractiseDesk({ store, session, around }: PractiseDeskProps): JSX.Element {
  const [problem, setProblem] = useState('');
  const { open, answered, length } = session;
  const last = answered.at(-1);
  // What was answered before the page was loaded again is not taught twice.
  const [passedId, setPassedId] = useState(last?.id);
  const taught: Answered | null = last === undefined || last.id === passedId ? null : last;
  const fail = (): void => {
    setProblem('This device did not keep it: is its storage full? Try once more.');
  };
  const isAllAnswered = answered.length >= length;
  const isToBeAsked = taught === null && open === null && !isAllAnswered;
  // Undefined: not fetched, or not yet.
  const [voice, setVoice] = useState<Float32Array | null>();
  useEffect(() => {
    speaker.hush();
    const needsVoice = isReadyForVoice(store.practice.peek()) || open?.question.purpose === 'voice';
    // Fetched only when a voice on the channel is the next thing to get used to.
    if (needsVoice) {
      channelVoice(VOICE_S, QUESTION_RATE_HZ).then(setVoice, () => {
        setVoice(null);
      });
    }
  }, []);
  useEffect(() => {
    if (!isToBeAsked) return;
    const practice = store.practice.peek();
    const seed = Math.trunc(Math.random() * 0x7fff_ffff);
    const asking = { atMs: Date.now(), seed, hasVoice: voice instanceof Float32Array };
    const question = nextQuestion(practice, session, around, asking);
    store.append({ kind: 'asked', question }).catch(fail);
  }, [isToBeAsked]);
  const end = (): void => {
    store.append({ kind: 'ended' }).catch(fail);
  };
  const answer = (given: Answer, tookS: number, plays: number): void => {
    if (open === null) return;
    store
      .append({ kind: 'answered', questionId: open.id, answer: given, tookS, plays })
      .then(() => {
        setProblem('');
      }, fail);
  };
  const goOn = (): void => {
    if (isAllAnswered) end();
    else setPassedId(last?.id);
  };
  // Loaded again after the last answer: nothing is left to ask.
  useEffect(() => {
    if (taught === null && isAllAnswered) end();
  }, []);
  const number = Math.min(length, taught === null ? answered.length + 1 : answered.length);
  return (
    <div class="desk">
      <div class="desk-head">
        <p aria-live="polite">
          Question {number} of {length}
        </p>
        <button type="button" class="quiet" onClick={end}>
          End the session
        </button>
      </div>
      <p class="problem" role="alert">
        {problem}
      </p>
      {taught === null ? (
        open === null ? null : open.question.voiceDb !== null && voice === undefined ? (
          <p>Fetching the voice on the channel …</p>
        ) : (
          <QuestionCard
            key={open.id}
            question={open.question}
            voice={voice ?? null}
            onAnswer={answer}
          />
        )
      ) : (
        <AnswerTaught key={taught.id} answered={taught} isLast={isAllAnswered} onNext={goOn} />
      )}
    </div>
  );
}
