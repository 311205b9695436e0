import type { JSX } from 'preact';

/** The tool listens to the receiver, by microphone or from a recording, and says which ident it hears. */
export function ListenSection(): JSX.Element {
  return <h2>Listen</h2>;
}
