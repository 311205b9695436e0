import type { JSX } from 'preact';
import '../fly-sheets.css';
import type { Deck } from './deck.ts';
import { FlightSheet } from './flight-sheet.tsx';
import { IdentSheet } from './ident-sheet.tsx';
import { ReadingsSheet } from './readings-list.tsx';
import { SkipSheet } from './skip-sheet.tsx';
import { SpokenSheet } from './spoken-sheet.tsx';

/** The sheet that lies over the Fly page. */
export function OpenSheet({ deck }: { readonly deck: Deck }): JSX.Element | null {
  switch (deck.sheet.value) {
    case 'ident':
      return <IdentSheet deck={deck} />;
    case 'readings':
      return <ReadingsSheet deck={deck} />;
    case 'spoken':
      return <SpokenSheet deck={deck} />;
    case 'skip':
      return <SkipSheet deck={deck} />;
    case 'more':
      return <FlightSheet deck={deck} />;
    case null:
      return null;
  }
}
