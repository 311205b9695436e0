import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import {
  besideEachOther,
  differenceWords,
  type LetterBeside,
} from '../../src/ident/drill/difference.ts';
import type { Sent } from '../../src/ident/drill/event.ts';
import type { Answered } from '../../src/ident/drill/practice.ts';
import { phonetic } from '../../src/speech/phonetic.ts';
import { BesideMarks } from './beside-marks.tsx';
import { useCompared } from './compared-sound.ts';

interface AnswerTaughtProps {
  readonly answered: Answered;
  readonly isLast: boolean;
  readonly onNext: () => void;
}

/** What was sent beside what was answered, seen and heard, with the element that differs marked. */
export function AnswerTaught({ answered, isLast, onNext }: AnswerTaughtProps): JSX.Element {
  const { question, judgement } = answered;
  const next = useRef<HTMLButtonElement>(null);
  // Before it is drawn: a key pressed at once must find it.
  useLayoutEffect(() => {
    next.current?.focus({ preventScroll: true });
  }, []);
  const other = otherIdent(answered);
  const { sent } = question;
  return (
    <div class="taught">
      <p class="verdict" role="status">
        <b>{judgement.isRight ? 'Right.' : 'Not right.'}</b> {whatItWas(sent)}
      </p>
      {sent.kind === 'ident' ? (
        <IdentTaught sent={sent.ident} other={other} isPlate={question.plate !== null} />
      ) : (
        <p>{WHAT_IT_MEANS[sent.kind]}</p>
      )}
      <div class="row">
        <button type="button" class="hurry main" ref={next} onClick={onNext}>
          {isLast ? 'What it came to' : 'Next'} <kbd>Enter</kbd>
        </button>
      </div>
    </div>
  );
}

const WHAT_IT_MEANS: Readonly<Record<Exclude<Sent['kind'], 'ident'>, string>> = {
  test: 'TEST, dash · dot · dot dot dot · dash: the station is being worked on. What the needle shows is not to be used.',
  nothing:
    'No ident: the station is off, being worked on, or not the one that you think. Not to be used.',
  'dme-only':
    'The higher tone, 1350 Hz, alone and once in about half a minute: the DME works, the VOR does not. The needle is not to be used.',
};

function whatItWas(sent: Sent): string {
  switch (sent.kind) {
    case 'ident':
      return `It was ${sent.ident}, ${phonetic(sent.ident)}.`;
    case 'test':
      return 'It was TEST: not identified.';
    case 'nothing':
      return 'Nothing was keyed: not identified.';
    case 'dme-only':
      return `It was the DME of ${sent.ident} alone: not identified.`;
  }
}

/** What the sound is compared with: the answer, or the plate; null where it is the same or there is none. */
function otherIdent({ question, answer }: Answered): string | null {
  const { sent, plate } = question;
  if (sent.kind !== 'ident') return null;
  const other = plate ?? (answer.kind === 'letters' ? answer.letters.toUpperCase() : '');
  return other === '' || other === sent.ident ? null : other;
}

interface IdentTaughtProps {
  readonly sent: string;
  readonly other: string | null;
  readonly isPlate: boolean;
}

function IdentTaught({ sent, other, isPlate }: IdentTaughtProps): JSX.Element {
  const { playing, problem, play } = useCompared();
  const beside = besideEachOther(sent, other ?? sent);
  const [letter, otherLetter] = firstDifference(beside);
  const otherName = isPlate ? 'On the plate' : 'Your answer';
  return (
    <>
      <BesideMarks
        beside={beside}
        rows={other === null ? ['Sent'] : ['Sent', otherName]}
        sounding={playing}
      />
      {beside
        .map(differenceWords)
        .filter((words) => words !== '')
        .map((words) => (
          <p key={words}>{words}</p>
        ))}
      <p class="problem" role="alert">
        {problem}
      </p>
      <div class="row wrap">
        <button
          type="button"
          onClick={() => {
            play(other === null ? [sent] : [sent, other]);
          }}
        >
          {other === null ? `Hear ${sent}` : `Hear ${sent}, then ${other}`}
        </button>
        {letter === null || otherLetter === null || letter === sent ? null : (
          <button
            type="button"
            onClick={() => {
              play([letter, otherLetter]);
            }}
          >
            Only {letter}, then {otherLetter}
          </button>
        )}
      </div>
    </>
  );
}

function firstDifference(beside: readonly LetterBeside[]): readonly [string | null, string | null] {
  const found = beside.find(
    ({ sent, answered }) => sent !== answered && sent !== null && answered !== null,
  );
  return [found?.sent ?? null, found?.answered ?? null];
}
