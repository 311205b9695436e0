import type { ComponentType, JSX } from 'preact';
import '../form.css';
import './idents-page.css';
import { useLoaded } from '../parts/later.ts';
import { addressOf, route, type IdentsSection } from '../parts/route.ts';

const SECTIONS: readonly { readonly section: IdentsSection; readonly name: string }[] = [
  { section: 'hear', name: 'Hear one' },
  { section: 'listen', name: 'Tool listens' },
  { section: 'practise', name: 'Practise' },
  { section: 'look-up', name: 'Look up' },
];

// Each is fetched when it is first asked for.
const LOADERS: Readonly<Record<IdentsSection, () => Promise<ComponentType>>> = {
  hear: () => import('../idents/hear-section.tsx').then((room) => room.HearSection),
  listen: () => import('../idents/listen-section.tsx').then((room) => room.ListenSection),
  practise: () => import('../idents/practise-section.tsx').then((room) => room.PractiseSection),
  'look-up': () => import('../idents/lookup-section.tsx').then((room) => room.LookUpSection),
};

/** Idents: heard, listened for, practised and looked up. */
export function IdentsPage(): JSX.Element {
  const shown = route.value.page === 'idents' ? route.value.section : 'hear';
  const { Page: Section, problem } = useLoaded(LOADERS[shown]);
  return (
    <main class="plain idents">
      <p class="back">
        <a href={addressOf({ page: 'flights' })}>All flights</a>
      </p>
      <h1 tabIndex={-1}>Idents</h1>
      <nav class="sections" aria-label="Idents">
        {SECTIONS.map(({ section, name }) => (
          <a
            key={section}
            href={addressOf({ page: 'idents', section })}
            aria-current={section === shown ? 'page' : undefined}
          >
            {name}
          </a>
        ))}
      </nav>
      {problem === null ? null : (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {Section === null ? null : <Section />}
      <p class="caution">
        An ident heard here is an aid: <b>you listen and decide</b>. No ident, TEST, or any doubt:
        do not use the station. Charts, NOTAMs and local rules come first.
      </p>
    </main>
  );
}
