import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import './practise.css';
import { openPractice, type PracticeStore } from '../store/practice-store.ts';
import { identsAround, knownStations } from './known-stations.ts';
import { PractiseDesk } from './practise-desk.tsx';
import { PractiseFile } from './practise-file.tsx';
import { PractiseProgress } from './practise-progress.tsx';
import { PractiseStart } from './practise-start.tsx';
import { PractiseSummary } from './practise-summary.tsx';

type Around = ReturnType<typeof identsAround>;

const NOWHERE: Around = { route: [], near: [] };

/** Idents practised by ear: asked, answered, taught; what is known and what is confused as a picture. */
export function PractiseSection(): JSX.Element {
  const [store, setStore] = useState<PracticeStore | null>(null);
  const [around, setAround] = useState(NOWHERE);
  const [problem, setProblem] = useState('');
  useEffect(() => {
    openPractice().then(setStore, (error: unknown) => {
      setProblem(error instanceof Error ? error.message : String(error));
    });
    // Without the flights there is still everything else to practise.
    knownStations().then(
      (stations) => {
        setAround(identsAround(stations));
      },
      () => undefined,
    );
  }, []);
  return (
    <section class="practise" aria-labelledby="practise-title">
      <h2 id="practise-title" class="hidden">
        Practise
      </h2>
      <p class="problem" role="alert">
        {problem}
      </p>
      {store === null ? null : <Practising store={store} around={around} />}
    </section>
  );
}

interface PractisingProps {
  readonly store: PracticeStore;
  readonly around: Around;
}

/** The start, a session, or what it came to. */
function Practising({ store, around }: PractisingProps): JSX.Element {
  const practice = store.practice.value;
  // A session that was left open by a reload waits for a tap: before one no browser lets a page sound.
  const [sessionShown, setSessionShown] = useState<string | null>(null);
  const shown = practice.sessions.find((session) => session.id === sessionShown);
  if (shown !== undefined) {
    const leave = (): void => {
      setSessionShown(null);
    };
    return shown.isEnded ? (
      <PractiseSummary session={shown} practice={practice} onDone={leave} />
    ) : (
      <PractiseDesk store={store} session={shown} around={around} />
    );
  }
  return (
    <>
      <PractiseStart store={store} route={around.route} onStart={setSessionShown} />
      <PractiseProgress store={store} />
      <PractiseFile store={store} />
    </>
  );
}
