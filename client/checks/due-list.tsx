import type { JSX } from 'preact';
import { receiversDue } from '../../src/station/library/check-due.ts';
import type { LoggedCheck } from '../../src/station/library/check-log.ts';
import { nowMs } from '../parts/clock.ts';
import { dueWords, minuteUtc } from './check-words.ts';

/** When each receiver is next due, the most pressing first; checks struck through do not count. */
export function DueList({ checks }: { readonly checks: readonly LoggedCheck[] }): JSX.Element {
  const standing = checks.filter(({ struckAtMs }) => struckAtMs === null);
  const due = receiversDue(
    standing.map(({ check }) => check),
    minuteUtc(nowMs.value).slice(0, 10),
  );
  return (
    <section aria-labelledby="due-title">
      <h2 id="due-title">Next due</h2>
      {due.length === 0 ? (
        <p>No check in the log. Nothing tells here that a receiver is right.</p>
      ) : (
        <ul class="due">
          {due.map((each) => (
            <li key={`${each.aircraft} ${each.receiver}`}>
              <b>{[each.aircraft, each.receiver].filter((name) => name !== '').join(', ')}</b>
              <p class={each.standing === 'valid' ? '' : 'doubt'}>{dueWords(each)}</p>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
