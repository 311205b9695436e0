import type { ComponentType, JSX } from 'preact';
import { useLoaded } from './later.ts';

const loadNotice = (): Promise<ComponentType> =>
  import('../checks/due-notice.tsx').then((room) => room.DueNotice);

/** Where a flight is begun: what is not in order with the receivers. Fetched later: few flights have anything. */
export function BeforeFlight(): JSX.Element | null {
  const { Page: Notice } = useLoaded(loadNotice);
  return Notice === null ? null : <Notice />;
}
