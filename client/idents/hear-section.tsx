import type { JSX } from 'preact';

/** An ident as it is keyed on the air, to be compared with the receiver. */
export function HearSection(): JSX.Element {
  return <h2>Hear</h2>;
}
