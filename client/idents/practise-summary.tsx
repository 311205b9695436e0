import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Practice, Session } from '../../src/ident/drill/practice.ts';
import { summaryOf } from '../../src/ident/drill/session-summary.ts';
import { decibels } from './practise-figures.ts';

interface PractiseSummaryProps {
  readonly session: Session;
  readonly practice: Practice;
  readonly onDone: () => void;
}

/** What a session came to. */
export function PractiseSummary({ session, practice, onDone }: PractiseSummaryProps): JSX.Element {
  const done = useRef<HTMLButtonElement>(null);
  // Before it is drawn: a key pressed at once must find it.
  useLayoutEffect(() => {
    done.current?.focus({ preventScroll: true });
  }, []);
  const { answered, right, missed, mixed, wrongYes, durationS } = summaryOf(session);
  const hasNoise = session.answered.some(({ question }) => question.purpose === 'noise');
  const threshold = session.thresholdDb;
  return (
    <div class="summary">
      <h3>The session</h3>
      {answered === 0 ? (
        <p>Nothing was answered.</p>
      ) : (
        <>
          <p class="verdict" role="status">
            <b>
              {right} of {answered} right
            </b>{' '}
            in {minutes(durationS)}.
          </p>
          <ul>
            {wrongYes === 0 ? null : (
              <li class="act">
                {wrongYes === 1 ? 'Once' : `${wrongYes} times`} yes to a station that was not the
                one on the plate.
              </li>
            )}
            {missed.length === 0 ? null : <li>Missed: {missed.join(', ')}.</li>}
            {mixed.length === 0 ? null : (
              <li>
                Mixed up:{' '}
                {mixed
                  .map(({ letters }) => `${letters.charAt(0)} and ${letters.charAt(1)}`)
                  .join(', ')}
                .
              </li>
            )}
            {hasNoise ? (
              <li>
                {threshold === null
                  ? `Noise next time: ${decibels(practice.noise.levelDb)} tone over noise. The threshold is not known yet.`
                  : `Threshold in noise: ${decibels(threshold)} tone over noise.`}
              </li>
            ) : null}
          </ul>
        </>
      )}
      <p>
        <button type="button" class="main hurry" ref={done} onClick={onDone}>
          Done <kbd>Enter</kbd>
        </button>
      </p>
    </div>
  );
}

function minutes(durationS: number): string {
  if (durationS < 90) return `${Math.round(durationS)} seconds`;
  return `${Math.round(durationS / 60)} minutes`;
}
