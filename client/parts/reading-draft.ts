import { computed, signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { FlightState, ReadingRecord } from '../../src/flight/state.ts';
import type { Leg } from '../../src/leg/leg.ts';
import type { Foresight } from '../../src/track/foresight.ts';
import { expectedPanel, panelOf, type ExpectedPanel, type PanelValues } from './expected-panel.ts';

/** What the pilot has put in since the last reading; the rest follows what is expected. */
export interface ReadingDraft {
  readonly given: Signal<Partial<PanelValues>>;
  readonly expected: ReadonlySignal<ExpectedPanel>;
  readonly shown: ReadonlySignal<PanelValues>;
  /** The reading that is being corrected; null: a new one. */
  readonly correcting: Signal<ReadingRecord | null>;
}

/** Opens a draft that follows the flight. */
export function openDraft(
  state: ReadonlySignal<FlightState>,
  leg: ReadonlySignal<Leg | null>,
  foresight: ReadonlySignal<Foresight | null>,
): ReadingDraft {
  const given = signal<Partial<PanelValues>>({});
  const correcting = signal<ReadingRecord | null>(null);
  const expected = computed(() => expectedPanel(state.value, leg.value, foresight.value));
  const shown = computed(() => {
    const record = correcting.value;
    const base = record === null ? expected.value : panelOf(record);
    return { ...base, ...given.value };
  });
  return { given, expected, shown, correcting };
}
