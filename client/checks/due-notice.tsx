import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import './due-notice.css';
import { receiversDue } from '../../src/station/library/check-due.ts';
import { nowMs } from '../parts/clock.ts';
import { addressOf } from '../parts/route.ts';
import { openChecks, type CheckStore } from './check-store.ts';
import { dueNotice, minuteUtc } from './check-words.ts';

/**
 * Before a flight: what is not in order with the receivers by the log; nothing where all of them are, or where no log
 * is kept. A pilot who keeps none is told so on its own page, not at every flight.
 */
export function DueNotice(): JSX.Element | null {
  const [store, setStore] = useState<CheckStore | null>(null);
  // A device that keeps no log says so on the page of the log.
  useEffect(() => void openChecks().then(setStore, () => undefined), []);
  if (store === null) return null;
  const standing = store.checks.value.filter(({ struckAtMs }) => struckAtMs === null);
  const today = minuteUtc(nowMs.value).slice(0, 10);
  const words = receiversDue(
    standing.map(({ check }) => check),
    today,
  ).flatMap((due) => dueNotice(due) ?? []);
  if (words.length === 0) return null;
  return (
    <p role="status" class="due-notice">
      {words.map((each) => (
        <span key={each}>{each} </span>
      ))}
      <a href={addressOf({ page: 'checks' })}>Look at the checks</a>
    </p>
  );
}
