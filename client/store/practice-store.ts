import { signal, type ReadonlySignal } from '@preact/signals';
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { monotonicFactory } from 'ulid';
import type { PracticeEvent } from '../../src/ident/drill/event.ts';
import {
  NO_PRACTICE,
  practiceOf,
  withEvent,
  type Practice,
} from '../../src/ident/drill/practice.ts';

type WithoutStamp<Event> = Event extends unknown ? Omit<Event, 'id' | 'atMs'> : never;

/** What happened, before the store gives it an id and a time. */
export type PracticeFields = WithoutStamp<PracticeEvent>;

/** The practice of this device: what it comes to follows every event. */
export interface PracticeStore {
  readonly practice: ReadonlySignal<Practice>;
  readonly events: ReadonlySignal<readonly PracticeEvent[]>;
  /** Settles when the event is on disk; `practice` has followed by then. */
  append(fields: PracticeFields): Promise<PracticeEvent>;
  /** Takes in the log of another device; gives how many of its events were new. */
  merge(incoming: readonly PracticeEvent[]): Promise<number>;
}

interface Disk extends DBSchema {
  events: { key: string; value: PracticeEvent };
}

// A database of its own: the layout of the flights does not change for it.
const openDisk = (): Promise<IDBPDatabase<Disk>> =>
  openDB<Disk>('spoken-radial-practice', 1, {
    upgrade(database) {
      database.createObjectStore('events', { keyPath: 'id' });
    },
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
    },
  });

const nextUlid = monotonicFactory();

let opened: Promise<PracticeStore> | null = null;

/** The practice log of this device; rejects where the browser keeps nothing. */
export function openPractice(): Promise<PracticeStore> {
  opened ??= open().catch((reason: unknown) => {
    opened = null;
    throw new Error('This browser does not let the page keep a practice log.', { cause: reason });
  });
  return opened;
}

async function open(): Promise<PracticeStore> {
  let disk = await openDisk();
  const events = signal<readonly PracticeEvent[]>(await disk.getAll('events'));
  const practice = signal<Practice>(
    events.peek().length === 0 ? NO_PRACTICE : practiceOf(events.peek()),
  );

  /** Durable before it is shown; a connection that the browser has closed is opened again. */
  async function save(added: readonly PracticeEvent[]): Promise<void> {
    const put = async (): Promise<void> => {
      const transaction = disk.transaction('events', 'readwrite', { durability: 'strict' });
      await Promise.all([...added.map((event) => transaction.store.put(event)), transaction.done]);
    };
    await put().catch(async () => {
      disk = await openDisk();
      await put();
    });
  }

  const lastAtMs = (): number =>
    events.peek().reduce((latest, event) => Math.max(latest, event.atMs), 0);

  return {
    practice,
    events,
    async append(fields) {
      const atMs = Math.max(Date.now(), lastAtMs());
      const event: PracticeEvent = { ...fields, id: nextUlid(atMs), atMs };
      await save([event]);
      events.value = [...events.peek(), event];
      practice.value = withEvent(practice.peek(), event);
      return event;
    },
    async merge(incoming) {
      const known = new Set(events.peek().map(({ id }) => id));
      const added = incoming.filter(({ id }) => !known.has(id));
      if (added.length === 0) return 0;
      await save(added);
      events.value = [...events.peek(), ...added];
      practice.value = practiceOf(events.peek());
      return added.length;
    },
  };
}
