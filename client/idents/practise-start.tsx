import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { About, Pace } from '../../src/ident/drill/event.ts';
import { Choice } from '../form/choice.tsx';
import type { PracticeStore } from '../store/practice-store.ts';

interface PractiseStartProps {
  readonly store: PracticeStore;
  /** Idents of the planned flight. */
  readonly route: readonly string[];
  readonly onStart: (sessionId: string) => void;
}

const LENGTHS = { 10: '10', 20: '20', 40: '40' } as const;
type Length = `${keyof typeof LENGTHS}`;

/** What to practise, and off; or the session that was left open. */
export function PractiseStart({ store, route, onStart }: PractiseStartProps): JSX.Element {
  const last = store.practice.value.sessions.at(-1);
  const [about, setAbout] = useState<About>(last?.about ?? 'mixed');
  const [pace, setPace] = useState<Pace>(last?.pace ?? 'way-in');
  const [length, setLength] = useState<Length>('20');
  const [problem, setProblem] = useState('');
  const start = (): void => {
    store.append({ kind: 'started', about, pace, length: Number(length) }).then(
      (event) => {
        onStart(event.id);
      },
      () => {
        setProblem('This device did not keep it: is its storage full?');
      },
    );
  };
  return (
    <>
      <p>
        Listen and write the ident down, or say whether it is the one on the plate. What comes next
        follows your own mistakes
        {route.length === 0 ? '.' : `, and the idents of your flight first: ${route.join(', ')}.`}
      </p>
      {last === undefined || last.isEnded ? null : (
        <div class="row wrap open-session">
          <p>
            A session is open: {last.answered.length} of {last.length} answered.
          </p>
          <button
            type="button"
            class="main"
            onClick={() => {
              onStart(last.id);
            }}
          >
            Go on with it
          </button>
        </div>
      )}
      <div class="fields">
        <Choice
          name="practise-about"
          label="What"
          value={about}
          words={{ mixed: 'Mixed', letters: 'Letters', noise: 'In noise' }}
          onChange={setAbout}
        />
        <Choice
          name="practise-pace"
          label="Keyed"
          value={pace}
          words={{ 'way-in': 'With a way in', 'on-air': 'As on the air' }}
          onChange={setPace}
        />
        <Choice
          name="practise-length"
          label="Questions"
          value={length}
          words={LENGTHS}
          onChange={setLength}
        />
      </div>
      <p class="soft">
        The way in keys quick letters with long gaps and comes down to a station’s 7 words a minute
        in four sessions.
      </p>
      <p class="problem" role="alert">
        {problem}
      </p>
      <p>
        <button type="button" class="main hurry" onClick={start}>
          Start
        </button>
      </p>
    </>
  );
}
