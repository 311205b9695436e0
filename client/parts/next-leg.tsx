import type { JSX } from 'preact';
import type { Leg } from '../../src/leg/leg.ts';
import { speaker } from '../voice/speaker.ts';
import type { Deck } from './deck.ts';
import { threeFigures } from './figures.ts';

/** Begins the leg after the one being flown, for the pilot to tap; nothing where there is none. */
export function NextLeg({
  deck,
  isLarge,
  onBegun,
}: {
  readonly deck: Deck;
  readonly isLarge: boolean;
  readonly onBegun?: () => void;
}): JSX.Element | null {
  const { plan, legIndex } = deck.state.value;
  const next = plan?.legs[legIndex + 1];
  if (next === undefined) return null;
  const begin = async (): Promise<void> => {
    if (!(await deck.record({ kind: 'leg-started', legIndex: legIndex + 1 }))) return;
    const { advice } = deck.state.peek();
    if (advice !== null) speaker.say(advice.say, { channel: 'answer', urgency: 'urgent' });
    onBegun?.();
  };
  return (
    <button type="button" class={isLarge ? 'hurry main' : ''} onClick={() => void begin()}>
      Begin leg {legIndex + 2}: {legName(next)}
    </button>
  );
}

/** The same on the Fly page, once an arc nears the radial where it is left. */
export function NextLegAfterArc({ deck }: { readonly deck: Deck }): JSX.Element | null {
  const { advice } = deck.state.value;
  if (deck.leg.value?.arc === undefined || advice?.phase !== 'arriving') return null;
  return <NextLeg deck={deck} isLarge />;
}

function legName({ arc, direction, courseDeg, station }: Leg): string {
  if (arc) return `arc about ${station.ident}`;
  return `${direction} ${station.ident} on ${threeFigures(courseDeg)}`;
}
