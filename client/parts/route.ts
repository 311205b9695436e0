import { signal, type ReadonlySignal } from '@preact/signals';

/** Which page is shown; the part of the address after the `#`. */
export type Route =
  | { readonly page: 'flights' }
  | { readonly page: 'plan' }
  | { readonly page: 'settings' }
  | { readonly page: 'fly'; readonly flightId: string };

function readRoute(hash: string): Route {
  const [page, flightId] = hash.replace(/^#\/?/, '').split('/');
  if (page === 'fly' && flightId !== undefined && flightId !== '') {
    return { page, flightId: decodeURIComponent(flightId) };
  }
  if (page === 'plan' || page === 'settings') return { page };
  return { page: 'flights' };
}

const current = signal<Route>(readRoute(location.hash));

/** The page that the address asks for; an unknown address leads to the list of flights. */
export const route: ReadonlySignal<Route> = current;

addEventListener('hashchange', () => {
  current.value = readRoute(location.hash);
});

/** The address of a page, for a link. */
export function addressOf(to: Route): string {
  if (to.page === 'flights') return '#/';
  return to.page === 'fly' ? `#/fly/${encodeURIComponent(to.flightId)}` : `#/${to.page}`;
}

/** Goes to a page. */
export function goTo(to: Route): void {
  location.hash = addressOf(to);
}
