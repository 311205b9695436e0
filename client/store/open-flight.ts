import { computed, effect, signal, untracked, type ReadonlySignal } from '@preact/signals';
import type { FlightEvent } from '../../src/flight/event.ts';
import { addEvents, emptyFold, type Fold } from '../../src/flight/fold.ts';
import { orderEvents } from '../../src/flight/log.ts';
import type { FlightState } from '../../src/flight/state.ts';
import { settings } from '../settings/settings.ts';
import { flightRow, loadEvents, saveEvents, type FlightRow } from './log-disk.ts';
import { getEvents, Refused } from './server-calls.ts';
import { linkToServer, type SyncState } from './server-link.ts';
import { stamp, type EventFields } from './stamp-event.ts';
import { linkTabs } from './tab-link.ts';

/** One flight, open: its state follows every event, from this page or from elsewhere. */
export interface FlightStore {
  readonly id: string;
  readonly state: ReadonlySignal<FlightState>;
  /** The whole log, in time order. */
  readonly events: ReadonlySignal<readonly FlightEvent[]>;
  /** Settles when the event is on disk; `state` has followed by then. */
  append(fields: EventFields): Promise<FlightEvent>;
  readonly syncState: ReadonlySignal<SyncState>;
  /** What the server refused, in words; null: nothing. */
  readonly syncProblem: ReadonlySignal<string | null>;
  close(): void;
}

/** What a log does not have yet. */
function newIn(
  log: readonly FlightEvent[],
  incoming: readonly FlightEvent[],
): readonly FlightEvent[] {
  const known = new Set(log.map((event) => event.id));
  return incoming.filter((event) => !known.has(event.id));
}

/** The server takes no longer one. */
const LONGEST_NAME = 200;

function nameOf(log: readonly FlightEvent[]): string {
  const plan = log.findLast((event) => event.kind === 'plan');
  const name = plan?.name.trim() ?? '';
  return name === '' ? 'Flight' : name.slice(0, LONGEST_NAME);
}

const rowOf = (id: string, log: readonly FlightEvent[], nowMs: number): FlightRow => ({
  id,
  name: nameOf(log),
  createdAtMs: log[0]?.atMs ?? nowMs,
  isDeleted: false,
});

/** A flight that this device does not have is asked for at the server: the second screen. */
async function firstLog(id: string): Promise<readonly FlightEvent[]> {
  const here = await loadEvents(id);
  const row = await flightRow(id);
  if (here.length > 0 || (row !== undefined && !row.isDeleted)) return here;
  const theirs = await getEvents(id, null).catch((reason: unknown) => {
    throw new Error(
      reason instanceof Refused
        ? `There is no flight ${id}, neither on this device nor on the server.`
        : `The flight ${id} is not on this device, and the server does not answer.`,
      { cause: reason },
    );
  });
  await saveEvents(rowOf(id, theirs, Date.now()), theirs);
  return theirs;
}

/**
 * Opens a flight of this device or of the server; rejects with a sentence when neither has it.
 *
 * Everything works with the server gone: events are on this disk first, the server gets them when it answers.
 */
export async function openFlight(id: string): Promise<FlightStore> {
  const fold = signal<Fold>(emptyFold({ decimalWord: settings.peek().decimalWord }));
  const events = computed(() => fold.value.events);
  const state = computed(() => fold.value.state);

  const take = (incoming: readonly FlightEvent[]): void => {
    const added = newIn(fold.peek().events, incoming);
    if (added.length > 0) fold.value = addEvents(fold.peek(), added);
  };

  // The words of the answers change with the pilot's way of saying figures.
  const stopFollowingManner = effect(() => {
    const { decimalWord } = settings.value;
    untracked(() => {
      const { events: log, manner: folded } = fold.peek();
      if (folded.decimalWord !== decimalWord)
        fold.value = addEvents(emptyFold({ decimalWord }), log);
    });
  });

  const save = (added: readonly FlightEvent[]): Promise<void> =>
    saveEvents(rowOf(id, orderEvents([...events.peek(), ...added]), Date.now()), added);

  async function takeFromServer(incoming: readonly FlightEvent[]): Promise<void> {
    const added = newIn(events.peek(), incoming);
    if (added.length === 0) return;
    await save(added);
    take(added);
    tabs.tell(added);
  }

  // The tabs are listened to before the disk is read: nothing falls between.
  const tabs = linkTabs(id, take);
  try {
    take(await firstLog(id));
  } catch (reason) {
    tabs.close();
    stopFollowingManner();
    throw reason;
  }
  const server = linkToServer({
    flightId: id,
    log: () => events.peek(),
    name: () => nameOf(events.peek()),
    receive: takeFromServer,
  });
  let lastAtMs = 0;

  return {
    id,
    state,
    events,
    async append(fields) {
      const event = stamp(fields, Math.max(lastAtMs, events.peek().at(-1)?.atMs ?? 0));
      lastAtMs = event.atMs;
      await save([event]);
      take([event]);
      tabs.tell([event]);
      server.send();
      return event;
    },
    syncState: server.syncState,
    syncProblem: server.problem,
    close: () => {
      server.close();
      tabs.close();
      stopFollowingManner();
    },
  };
}
