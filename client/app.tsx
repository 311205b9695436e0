import { effect, signal } from '@preact/signals';
import type { ComponentType, JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import './look.css';
import './sheet.css';
import './print.css';
import { CautionsSheet } from './parts/cautions.tsx';
import { useLoaded } from './parts/later.ts';
import { route, type Route } from './parts/route.ts';
import { settings } from './settings/settings.ts';

const prefersDark = matchMedia('(prefers-color-scheme: dark)');
const isDark = signal(prefersDark.matches);
prefersDark.addEventListener('change', (change) => {
  isDark.value = change.matches;
});

effect(() => {
  const { palette } = settings.value;
  const light = palette === 'auto' ? (isDark.value ? 'night' : 'day') : palette;
  document.documentElement.dataset['light'] = light;
});

/** The whole page: the cautions once, then whatever the address asks for. */
export function App(): JSX.Element {
  const shown = route.value;
  useEffect(() => {
    document.title = TITLES[shown.page];
    scrollTo(0, 0);
    document.querySelector<HTMLElement>('h1[tabindex]')?.focus();
  }, [shown]);
  return (
    <>
      <Shown route={shown} />
      {settings.value.cautionsReadAtMs === null ? <CautionsSheet /> : null}
    </>
  );
}

const TITLES: Readonly<Record<Route['page'], string>> = {
  flights: 'Spoken Radial',
  plan: 'Type in a leg · Spoken Radial',
  settings: 'Settings · Spoken Radial',
  idents: 'Idents · Spoken Radial',
  stations: 'Stations · Spoken Radial',
  route: 'Plan a flight · Spoken Radial',
  checks: 'Receiver checks · Spoken Radial',
  fly: 'Fly · Spoken Radial',
};

function Shown({ route: shown }: { readonly route: Route }): JSX.Element {
  switch (shown.page) {
    case 'flights':
      return <Later page={loadFlights} />;
    case 'plan':
      return <Later page={loadPlan} />;
    case 'settings':
      return <Later page={loadSettings} />;
    case 'route':
      return <Later page={loadRoute} />;
    case 'stations':
      return <Later page={loadStations} />;
    case 'checks':
      return <Later page={loadChecks} />;
    case 'idents':
      return <Later page={loadIdents} />;
    case 'fly':
      return <LaterFly flightId={shown.flightId} />;
  }
}

// Fetched when first asked for: whoever opens one page does not wait for the others.
const loadFlights = () => import('./pages/flights-page.tsx').then((room) => room.FlightsPage);
const loadPlan = () => import('./pages/plan-page.tsx').then((room) => room.PlanPage);
const loadSettings = () => import('./pages/settings-page.tsx').then((room) => room.SettingsPage);
const loadRoute = () => import('./pages/route-page.tsx').then((room) => room.RoutePage);
const loadStations = () => import('./pages/stations-page.tsx').then((room) => room.StationsPage);
const loadChecks = () => import('./pages/checks-page.tsx').then((room) => room.ChecksPage);
const loadIdents = () => import('./pages/idents-page.tsx').then((room) => room.IdentsPage);
const loadFly = () => import('./pages/fly-page.tsx').then((room) => room.FlyPage);

function Later({ page }: { readonly page: () => Promise<ComponentType> }): JSX.Element {
  const { Page, problem } = useLoaded(page);
  return Page === null ? <Waiting problem={problem} /> : <Page />;
}

function LaterFly({ flightId }: { readonly flightId: string }): JSX.Element {
  const { Page, problem } = useLoaded(loadFly);
  return Page === null ? (
    <Waiting problem={problem} />
  ) : (
    <Page key={flightId} flightId={flightId} />
  );
}

function Waiting({ problem }: { readonly problem: string | null }): JSX.Element {
  return (
    <main class="plain">
      <h1>Spoken Radial</h1>
      <p role="alert">{problem}</p>
    </main>
  );
}
