import type { ComponentType, JSX } from 'preact';
import { useLoaded } from './later.ts';

const LOG = 'spoken-radial-checks';

/** Whether a log of receiver checks was ever begun here; true where the browser does not tell. */
async function hasLog(): Promise<boolean> {
  try {
    return (await indexedDB.databases()).some(({ name }) => name === LOG);
  } catch {
    return true;
  }
}

const Nothing = (): null => null;

const loadNotice = async (): Promise<ComponentType> =>
  (await hasLog()) ? (await import('../checks/due-notice.tsx')).DueNotice : Nothing;

/** Where a flight is begun: what is not in order with the receivers. Fetched only where a log of them is kept. */
export function BeforeFlight(): JSX.Element | null {
  const { Page: Notice } = useLoaded(loadNotice);
  return Notice === null ? null : <Notice />;
}
