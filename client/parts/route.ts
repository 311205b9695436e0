import { signal, type ReadonlySignal } from '@preact/signals';

/** Which page is shown; the part of the address after the `#`. */
export type Route =
  | { readonly page: 'flights' }
  | { readonly page: 'plan' }
  | { readonly page: 'settings' }
  | { readonly page: 'stations' }
  | { readonly page: 'route' }
  | { readonly page: 'checks' }
  | { readonly page: 'idents'; readonly section: IdentsSection }
  | { readonly page: 'fly'; readonly flightId: string };

/** Pages that need nothing but their name. */
const PLAIN = ['plan', 'settings', 'stations', 'route', 'checks'] as const;

const SECTIONS = ['hear', 'listen', 'practise', 'look-up'] as const;

/** What the page of idents is opened for. */
export type IdentsSection = (typeof SECTIONS)[number];

function readRoute(hash: string): Route {
  const [page, rest] = hash.replace(/^#\/?/, '').split('/');
  if (page === 'fly' && rest !== undefined && rest !== '') {
    return { page, flightId: decodeURIComponent(rest) };
  }
  if (page === 'idents') {
    return { page, section: SECTIONS.find((section) => section === rest) ?? 'hear' };
  }
  if (PLAIN.some((each) => each === page)) return { page: page as (typeof PLAIN)[number] };
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
  if (to.page === 'idents') return `#/idents/${to.section}`;
  return to.page === 'fly' ? `#/fly/${encodeURIComponent(to.flightId)}` : `#/${to.page}`;
}

/** Goes to a page. */
export function goTo(to: Route): void {
  location.hash = addressOf(to);
}
