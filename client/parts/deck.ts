import { computed, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import { checklistNow } from '../../src/flight/checklist-now.ts';
import { expectedAt } from '../../src/flight/expected.ts';
import type { FlightState, ReadingRecord } from '../../src/flight/state.ts';
import type { Leg } from '../../src/leg/leg.ts';
import type { CheckLine } from '../../src/procedure/checklist.ts';
import type { Foresight } from '../../src/track/foresight.ts';
import { settings } from '../settings/settings.ts';
import type { EventFields, FlightStore } from '../store/flight-store.ts';
import { nowMs } from './clock.ts';
import { openDraft, type ReadingDraft } from './reading-draft.ts';

/** Sheets that may lie over the Fly page. */
export type DeckSheet = 'ident' | 'readings' | 'spoken' | 'skip' | 'more';

/** What was said between two answers. */
export interface LastCall {
  readonly text: string;
  readonly atMs: number;
  /** It calls the turn off an arc: the heading that stands is no longer the one to fly. */
  readonly isLeadRadial?: boolean;
}

/** Everything that the parts of the Fly page look at and act on. */
export interface Deck {
  readonly store: FlightStore;
  readonly state: ReadonlySignal<FlightState>;
  readonly leg: ReadonlySignal<Leg | null>;
  /** The reading that the answer answers. */
  readonly last: ReadonlySignal<ReadingRecord | null>;
  readonly foresight: ReadonlySignal<Foresight | null>;
  readonly lines: ReadonlySignal<readonly CheckLine[]>;
  readonly isIdentConfirmed: ReadonlySignal<boolean>;
  readonly draft: ReadingDraft;
  readonly sheet: Signal<DeckSheet | null>;
  readonly isWhyShown: Signal<boolean>;
  /** When the panel last gave a reading (`performance.now()`): the second half of a double tap is no reading. */
  readonly givenAt: Signal<number>;
  /** The last timed call-out or reply to a question, as text. */
  readonly lastCall: Signal<LastCall | null>;
  /** What went wrong with the last thing that the pilot did; null: nothing. */
  readonly problem: Signal<string | null>;
  /** The pilot acts on this screen: it speaks. A screen that only follows stays silent. */
  readonly isActing: Signal<boolean>;
  /** Records something; false when it could not be recorded (`problem` says why). */
  record(fields: EventFields): Promise<boolean>;
}

/** How the pilot wants figures spoken. */
export function mannerOf(): { readonly decimalWord: 'decimal' | 'point' } {
  return { decimalWord: settings.value.decimalWord };
}

/** Whether a heading has ever been read: until then nobody knows whether there is a turn to make. */
export function isHeadingRead(deck: Deck): boolean {
  return deck.state.value.readings.some(
    (each) => !each.isTakenBack && each.reading.headingDeg !== undefined,
  );
}

/** Sets the Fly page's state up around one open flight. */
export function openDeck(store: FlightStore): Deck {
  const { state } = store;
  const leg = computed(() => state.value.plan?.legs[state.value.legIndex] ?? null);
  const foresight = computed(() => expectedAt(state.value, nowMs.value));
  const acting = signal(wasActing(store.id));
  const problem = signal<string | null>(null);
  return {
    store,
    state,
    leg,
    last: computed(() => state.value.readings.findLast((each) => each.advice !== null) ?? null),
    foresight,
    lines: computed(() => checklistNow(state.value, mannerOf())),
    isIdentConfirmed: computed(
      () => typeof state.value.legs[state.value.legIndex]?.identConfirmedAtMs === 'number',
    ),
    draft: openDraft(state, leg, foresight),
    sheet: signal(null),
    isWhyShown: signal(false),
    givenAt: signal(Number.NEGATIVE_INFINITY),
    lastCall: signal(null),
    problem,
    isActing: acting,
    record: async (fields) => {
      rememberActing(store.id, acting);
      try {
        await store.append(fields);
        problem.value = null;
        return true;
      } catch (error) {
        problem.value = `Not recorded: ${error instanceof Error ? error.message : String(error)}`;
        return false;
      }
    },
  };
}

// Kept for the tab only: a reload goes on speaking, another screen that opens the flight does not start.
const ACTING = 'spoken-radial.acting';

function wasActing(flightId: string): boolean {
  return sessionStorage.getItem(ACTING) === flightId;
}

function rememberActing(flightId: string, acting: Signal<boolean>): void {
  acting.value = true;
  sessionStorage.setItem(ACTING, flightId);
}
