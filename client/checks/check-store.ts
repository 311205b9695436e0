import { computed, signal, type ReadonlySignal } from '@preact/signals';
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { monotonicFactory } from 'ulid';
import {
  checksOf,
  type CheckEvent,
  type LoggedCheck,
} from '../../src/station/library/check-log.ts';

type WithoutStamp<Event> = Event extends unknown ? Omit<Event, 'id' | 'atMs'> : never;

/** What happened, before the store gives it an id and a time. */
type CheckFields = WithoutStamp<CheckEvent>;

/** The receiver checks of this device, the newest first, and the log that they come from. */
export interface CheckStore {
  readonly checks: ReadonlySignal<readonly LoggedCheck[]>;
  readonly events: ReadonlySignal<readonly CheckEvent[]>;
  /** Settles when the line is on disk; gives its id. There is no way to take one out. */
  append(fields: CheckFields): Promise<string>;
  /** Takes in the log of another device; gives how many of its lines were new. */
  merge(incoming: readonly CheckEvent[]): Promise<number>;
}

interface Disk extends DBSchema {
  events: { key: string; value: CheckEvent };
}

// A database of its own: the layout of the flights does not change for it.
const openDisk = (): Promise<IDBPDatabase<Disk>> =>
  openDB<Disk>('spoken-radial-checks', 1, {
    upgrade(database) {
      database.createObjectStore('events', { keyPath: 'id' });
    },
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
    },
  });

const nextUlid = monotonicFactory();

let opened: Promise<CheckStore> | null = null;

/** The log of this device; rejects where the browser keeps nothing. */
export function openChecks(): Promise<CheckStore> {
  opened ??= open().catch((reason: unknown) => {
    opened = null;
    throw new Error('This browser does not let the page keep a log.', { cause: reason });
  });
  return opened;
}

async function open(): Promise<CheckStore> {
  let disk = await openDisk();
  const events = signal<readonly CheckEvent[]>(await disk.getAll('events'));

  /** Durable before it is shown; a connection that the browser has closed is opened again. */
  async function save(added: readonly CheckEvent[]): Promise<void> {
    const add = async (): Promise<void> => {
      const transaction = disk.transaction('events', 'readwrite', { durability: 'strict' });
      // `add`, not `put`: a line that is there is never written over.
      await Promise.all([...added.map((event) => transaction.store.add(event)), transaction.done]);
    };
    await add().catch(async () => {
      disk = await openDisk();
      await add();
    });
    // Another tab may have written too: what is shown is what the disk has.
    events.value = await disk.getAll('events');
  }

  const lastAtMs = (): number =>
    events.peek().reduce((latest, event) => Math.max(latest, event.atMs), 0);

  return {
    checks: computed(() => checksOf(events.value)),
    events,
    async append(fields) {
      const atMs = Math.max(Date.now(), lastAtMs());
      const event: CheckEvent = { ...fields, id: nextUlid(atMs), atMs };
      await save([event]);
      return event.id;
    },
    async merge(incoming) {
      events.value = await disk.getAll('events').catch(() => events.peek());
      const known = new Set(events.peek().map(({ id }) => id));
      const added = incoming.filter(({ id }) => !known.has(id));
      if (added.length > 0) await save(added);
      return added.length;
    },
  };
}
