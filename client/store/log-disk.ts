import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { FlightEvent } from '../../src/flight/event.ts';

/** A flight as this device knows it. */
export interface FlightRow {
  readonly id: string;
  readonly name: string;
  readonly createdAtMs: number;
  /** Taken off this device by the pilot: not listed any more even if the server still has it. */
  readonly isDeleted: boolean;
}

interface EventRow {
  readonly flightId: string;
  readonly id: string;
  readonly event: FlightEvent;
}

interface Disk extends DBSchema {
  flights: { key: string; value: FlightRow };
  events: { key: [string, string]; value: EventRow };
}

let connection: Promise<IDBPDatabase<Disk>> | null = null;

function disk(): Promise<IDBPDatabase<Disk>> {
  const forget = (): void => {
    connection = null;
  };
  connection ??= openDB<Disk>('spoken-radial', 1, {
    upgrade(database) {
      database.createObjectStore('flights', { keyPath: 'id' });
      database.createObjectStore('events', { keyPath: ['flightId', 'id'] });
    },
    // A newer edition of the page in another tab wants to change the layout: let it.
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      forget();
    },
    terminated: forget,
  }).catch((reason: unknown) => {
    forget();
    throw reason;
  });
  return connection;
}

const ofFlight = (flightId: string): IDBKeyRange => IDBKeyRange.bound([flightId], [flightId, []]);

/** All flights that this device has, or has deleted. */
export async function flightRows(): Promise<readonly FlightRow[]> {
  return (await disk()).getAll('flights');
}

/** One flight, or undefined when this device never had it. */
export async function flightRow(id: string): Promise<FlightRow | undefined> {
  return (await disk()).get('flights', id);
}

/** The log of one flight, in the order of the ids. */
export async function loadEvents(flightId: string): Promise<readonly FlightEvent[]> {
  const rows = await (await disk()).getAll('events', ofFlight(flightId));
  return rows.map((row) => row.event);
}

/**
 * Writes events, and the flight that they belong to, in one transaction. Settles only when the browser
 * has flushed them to disk (`strict`): an answer is never shown for something that a crash could lose.
 */
export async function saveEvents(flight: FlightRow, events: readonly FlightEvent[]): Promise<void> {
  const transaction = (await disk()).transaction(['flights', 'events'], 'readwrite', {
    durability: 'strict',
  });
  const written = [
    transaction.objectStore('flights').put(flight),
    ...events.map((event) =>
      transaction.objectStore('events').put({ flightId: flight.id, id: event.id, event }),
    ),
  ];
  await Promise.all([...written, transaction.done]);
}

/** Removes the log of a flight and remembers that it is not to be listed. */
export async function eraseFlight(flight: FlightRow): Promise<void> {
  const transaction = (await disk()).transaction(['flights', 'events'], 'readwrite', {
    durability: 'strict',
  });
  await Promise.all([
    transaction.objectStore('flights').put({ ...flight, isDeleted: true }),
    transaction.objectStore('events').delete(ofFlight(flight.id)),
    transaction.done,
  ]);
}
