import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Answer, Question } from '../../src/ident/drill/event.ts';
import { questionSound } from '../../src/ident/drill/question-sound.ts';
import { MorseMarks } from '../parts/morse-marks.tsx';
import { settings } from '../settings/settings.ts';
import { playSamples, type PlayingSound } from '../sound/ident-player.ts';
import { LetterPad } from './letter-pad.tsx';

interface QuestionCardProps {
  readonly question: Question;
  /** Speech for a question that has a voice over it; null: none at hand. */
  readonly voice: Float32Array | null;
  readonly onAnswer: (answer: Answer, tookS: number, plays: number) => void;
}

/** The keyboard of the device would cover half the page: there the letters of the page are tapped. */
const isFinger = matchMedia('(pointer: coarse)').matches;

const LONGEST_ANSWER = 4;

/** One question: its sound, and the ways to answer it. Keys work while the focus is in it. */
export function QuestionCard({ question, voice, onAnswer }: QuestionCardProps): JSX.Element {
  const [letters, setLetters] = useState('');
  const [problem, setProblem] = useState('');
  const { isSounding, play, tookS, plays, soundProblem } = useQuestionSound(question, voice);
  const isCopy = question.plate === null;
  const box = useRef<HTMLDivElement>(null);
  // Before it is drawn: a key pressed at once must find it.
  useLayoutEffect(() => {
    box.current?.querySelector<HTMLElement>('input, [data-first]')?.focus({ preventScroll: true });
  }, []);
  const give = (answer: Answer): void => {
    onAnswer(answer, tookS(), plays());
  };
  const write = (text: string): void => {
    setProblem('');
    setLetters(
      text
        .toUpperCase()
        .replaceAll(/[^A-Z]/g, '')
        .slice(0, LONGEST_ANSWER),
    );
  };
  const submit = (): void => {
    if (letters === '') setProblem('Write what you heard, or “Not identified”.');
    else give({ kind: 'letters', letters });
  };
  const onKeyDown = (key: KeyboardEvent): void => {
    if (key.ctrlKey || key.altKey || key.metaKey) return;
    const isOnButton = key.target instanceof HTMLButtonElement;
    if (key.key === ' ' && !isOnButton) play();
    else if (key.key === '0') give({ kind: 'not-identified' });
    else if (!isCopy && key.key.toLowerCase() === 'y') give({ kind: 'yes' });
    else if (!isCopy && key.key.toLowerCase() === 'n') give({ kind: 'no' });
    else return;
    key.preventDefault();
  };
  return (
    <div class="question" ref={box} role="group" aria-label="Question" onKeyDown={onKeyDown}>
      <div class="question-sound">
        <p class="listening" aria-live="polite">
          {isSounding ? 'Listen' : isCopy ? 'What was it?' : 'Was it this one?'}
        </p>
        <button type="button" onClick={play}>
          Hear it again <kbd>Space</kbd>
        </button>
      </div>
      <p class="problem" role="alert">
        {soundProblem}
        {problem}
      </p>
      {question.plate === null ? (
        <form
          class="copy"
          onSubmit={(submitted) => {
            submitted.preventDefault();
            submit();
          }}
        >
          <label class="hidden" for="copy-letters">
            Letters heard
          </label>
          <input
            id="copy-letters"
            class="copied"
            type="text"
            value={letters}
            placeholder="···"
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            inputmode={isFinger ? 'none' : 'text'}
            onInput={(input) => {
              write(input.currentTarget.value);
              // What was not a letter does not stay in the field.
              input.currentTarget.value = input.currentTarget.value
                .toUpperCase()
                .replaceAll(/[^A-Z]/g, '')
                .slice(0, LONGEST_ANSWER);
            }}
          />
          <LetterPad
            onLetter={(letter) => {
              write(letters + letter);
            }}
            onRubOut={() => {
              write(letters.slice(0, -1));
            }}
          />
          <div class="row">
            <button
              type="button"
              class="hurry"
              onClick={() => {
                give({ kind: 'not-identified' });
              }}
            >
              Not identified <kbd>0</kbd>
            </button>
            <button type="submit" class="hurry main">
              Answer <kbd>Enter</kbd>
            </button>
          </div>
        </form>
      ) : (
        <PlateAnswers plate={question.plate} onAnswer={give} />
      )}
    </div>
  );
}

interface PlateAnswersProps {
  readonly plate: string;
  readonly onAnswer: (answer: Answer) => void;
}

/** The ident as a plate prints it, and whether it is the one that was heard. */
function PlateAnswers({ plate, onAnswer }: PlateAnswersProps): JSX.Element {
  const button = (
    kind: 'yes' | 'no' | 'not-identified',
    name: string,
    key: string,
  ): JSX.Element => (
    <button
      type="button"
      class="hurry"
      onClick={() => {
        onAnswer({ kind });
      }}
    >
      {name} <kbd>{key}</kbd>
    </button>
  );
  return (
    <>
      <div
        class="plate"
        tabIndex={-1}
        data-first
        role="group"
        aria-label={`On the plate: ${plate}`}
      >
        <span class="soft">On the plate</span>
        <b class="plate-ident">{plate}</b>
        <MorseMarks ident={plate} />
      </div>
      <div class="row">
        {button('yes', 'Yes', 'Y')}
        {button('no', 'No, another', 'N')}
        {button('not-identified', 'Not identified', '0')}
      </div>
    </>
  );
}

/** The sound of a question: played when the question is put, and as often as wanted. */
function useQuestionSound(
  question: Question,
  voice: Float32Array | null,
): {
  readonly isSounding: boolean;
  readonly soundProblem: string;
  readonly play: () => void;
  /** From the end of the keying as first played until now, seconds; 0 before its end. */
  readonly tookS: () => number;
  readonly plays: () => number;
} {
  const [isSounding, setSounding] = useState(false);
  const [soundProblem, setSoundProblem] = useState('');
  const playing = useRef<PlayingSound | null>(null);
  const plays = useRef(0);
  const keyedEndMs = useRef<number | null>(null);
  const sound = useRef<ReturnType<typeof questionSound> | null>(null);
  const play = (): void => {
    playing.current?.stop();
    sound.current ??= questionSound(question, voice);
    const { keyedEndS } = sound.current;
    const mine = playSamples(sound.current, settings.peek().volume, (nowS) => {
      if (nowS >= keyedEndS) keyedEndMs.current ??= performance.now();
    });
    playing.current = mine;
    plays.current += 1;
    setSounding(true);
    setSoundProblem('');
    mine.done
      .catch((error: unknown) => {
        setSoundProblem(error instanceof Error ? error.message : String(error));
      })
      .finally(() => {
        if (playing.current === mine) setSounding(false);
      });
  };
  useEffect(() => {
    play();
    return () => playing.current?.stop();
  }, []);
  return {
    isSounding,
    soundProblem,
    play,
    tookS: () =>
      keyedEndMs.current === null ? 0 : (performance.now() - keyedEndMs.current) / 1000,
    plays: () => plays.current,
  };
}
