import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import '../fly.css';
import '../fly-reading.css';
import '../fly-checklist.css';
// Last: it changes the others.
import '../fly-phone.css';
import { openFlight } from '../store/open-flight.ts';
import { Answer } from '../parts/answer.tsx';
import { answerNow } from '../parts/answer-now.ts';
import { sayLine } from '../parts/actions.ts';
import { ChecklistCard } from '../parts/checklist-card.tsx';
import { openDeck, type Deck } from '../parts/deck.ts';
import { FlyFooter } from '../parts/fly-footer.tsx';
import { FlyHeader } from '../parts/fly-header.tsx';
import { flyKeys } from '../parts/fly-keys.ts';
import { fetchLater, loadCard, loadFinished, loadSheets } from '../parts/fly-later.ts';
import { useLoaded } from '../parts/later.ts';
import { NextLegAfterArc } from '../parts/next-leg.tsx';
import { ReadingPanel } from '../parts/reading-panel.tsx';
import { addressOf } from '../parts/route.ts';
import { listenForKeys } from '../parts/single-keys.ts';
import { speakTimedCalls } from '../parts/timed-calls.ts';
import { nextItem } from '../../src/procedure/checklist.ts';
import { hasGesture } from '../sound/gesture.ts';
import { speaker } from '../voice/speaker.ts';

/** Opens one flight and shows it. */
export function FlyPage({ flightId }: { readonly flightId: string }): JSX.Element {
  const [deck, setDeck] = useState<Deck | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    let isGone = false;
    let stop = (): void => undefined;
    openFlight(flightId).then(
      (store) => {
        if (isGone) {
          store.close();
          return;
        }
        const opened = openDeck(store);
        const stopCalls = speakTimedCalls(opened);
        const stopKeys = listenForKeys(flyKeys(opened));
        const stopFetching = fetchLater();
        stop = () => {
          stopCalls();
          stopKeys();
          stopFetching();
          speaker.hush();
          store.close();
        };
        setDeck(opened);
      },
      (error: unknown) => {
        setProblem(error instanceof Error ? error.message : String(error));
      },
    );
    return () => {
      isGone = true;
      stop();
    };
  }, [flightId]);
  if (problem !== null) {
    return (
      <main class="plain">
        <h1 tabIndex={-1}>This flight cannot be opened</h1>
        <p role="alert">{problem}</p>
        <p>
          <a class="button" href={addressOf({ page: 'flights' })}>
            All flights
          </a>
        </p>
      </main>
    );
  }
  if (deck?.state.value.plan == null) {
    return (
      <main class="plain">
        <h1 tabIndex={-1}>Opening the flight…</h1>
      </main>
    );
  }
  return deck.state.value.finishedAtMs === null ? (
    <Flying deck={deck} />
  ) : (
    <LaterFinished deck={deck} />
  );
}

function Flying({ deck }: { readonly deck: Deck }): JSX.Element {
  const now = answerNow(deck);
  useReadFirstItem(deck);
  return (
    <div class={now === null ? 'fly' : 'fly answering'}>
      <FlyHeader deck={deck} />
      <main>
        <section class={now === null ? 'answer before' : 'answer'} aria-label="Answer">
          <ChecklistCard deck={deck} isLarge={now === null} />
          {now === null ? null : <Answer deck={deck} now={now} />}
          <NextLegAfterArc deck={deck} />
        </section>
        <ReadingPanel deck={deck} now={now} />
      </main>
      <FlyFooter deck={deck} />
      {hasGesture.value ? <LaterCard deck={deck} /> : null}
      {deck.sheet.value === null ? null : <LaterSheet deck={deck} />}
    </div>
  );
}

/** The first item is read as soon as the pilot, who has just opened the flight, looks at it. */
function useReadFirstItem(deck: Deck): void {
  useEffect(() => {
    const { readings, finishedAtMs, legs, legIndex } = deck.state.peek();
    const isFresh = readings.length === 0 && Object.keys(legs[legIndex]?.checks ?? {}).length === 0;
    if (isFresh && finishedAtMs === null) sayLine(nextItem(deck.lines.peek()));
  }, [deck]);
}

/** The sheets are fetched when one is first opened, if the first touch of the page has not done so. */
function LaterSheet({ deck }: { readonly deck: Deck }): JSX.Element | null {
  const { Page: OpenSheet, problem } = useLoaded(loadSheets);
  if (OpenSheet !== null) return <OpenSheet deck={deck} />;
  return problem === null ? null : (
    <p class="problem" role="alert">
      {problem}
    </p>
  );
}

/** For paper during the flight. */
function LaterCard({ deck }: { readonly deck: Deck }): JSX.Element | null {
  const { Page: Card } = useLoaded(loadCard);
  return Card === null ? null : <Card deck={deck} isOnScreen={false} />;
}

function LaterFinished({ deck }: { readonly deck: Deck }): JSX.Element {
  const { Page: Finished, problem } = useLoaded(loadFinished);
  if (Finished !== null) return <Finished deck={deck} />;
  return (
    <main class="plain">
      <h1 tabIndex={-1}>Flight finished</h1>
      <p class="problem" role="alert">
        {problem}
      </p>
    </main>
  );
}
