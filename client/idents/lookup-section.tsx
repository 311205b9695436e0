import type { JSX } from 'preact';

/** An ident that was heard, typed or tapped in dots and dashes: which letters and which station it is. */
export function LookUpSection(): JSX.Element {
  return <h2>Look up</h2>;
}
