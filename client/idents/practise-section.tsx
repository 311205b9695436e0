import type { JSX } from 'preact';

/** Idents practised by ear: asked, answered, taught; what is known and what is confused as a picture. */
export function PractiseSection(): JSX.Element {
  return <h2>Practise</h2>;
}
