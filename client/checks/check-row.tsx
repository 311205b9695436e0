import type { JSX } from 'preact';
import type { LoggedCheck } from '../../src/station/library/check-log.ts';
import { outcomeOf } from '../../src/station/library/receiver-check.ts';
import { dayWords, KIND_WORDS, minuteUtc, outcomeWords, rulesWords } from './check-words.ts';

interface CheckRowProps {
  readonly logged: LoggedCheck;
  readonly onStrike: () => void;
  readonly onBringBack: () => void;
}

/** One check of the log; one that was wrong stays to be read, struck through. */
export function CheckRow({ logged, onStrike, onBringBack }: CheckRowProps): JSX.Element {
  const { check, struckAtMs } = logged;
  const isStruck = struckAtMs !== null;
  const isFailed = outcomeOf(check).isPassed === false;
  const name = `${check.station}, ${dayWords(check.dateIso)} ${check.timeUtc}`;
  return (
    <li class={isStruck ? 'logged struck' : 'logged'}>
      <div>
        <p>
          <b>
            {dayWords(check.dateIso)} {check.timeUtc}
          </b>{' '}
          {KIND_WORDS[check.kind].name}
        </p>
        <p class={isFailed && !isStruck ? 'doubt' : ''}>
          <b>{outcomeWords(check)}</b>
        </p>
        <p class="soft">{figuresOf(logged)}</p>
        {isStruck ? (
          <p class="word">Struck through on {dayWords(minuteUtc(struckAtMs).slice(0, 10))}.</p>
        ) : (
          <p class="on-paper">Signed:</p>
        )}
      </div>
      <button
        type="button"
        class="quiet"
        aria-label={`${isStruck ? 'Bring back' : 'Strike through'}: ${name}`}
        onClick={isStruck ? onBringBack : onStrike}
      >
        {isStruck ? 'Bring back' : 'Strike through'}
      </button>
    </li>
  );
}

function figuresOf({ check }: LoggedCheck): string {
  const { expectedDeg, indicatedDeg, otherReceiver } = check;
  const bearings =
    otherReceiver === null
      ? `${check.receiver} shows ${indicatedDeg}°, expected ${expectedDeg}°`
      : `${check.receiver} shows ${indicatedDeg}°, ${otherReceiver} ${expectedDeg}°`;
  return [check.place, check.station, check.aircraft, bearings, check.who, rulesWords(check.rules)]
    .filter((each) => each !== '')
    .join(' · ');
}
