import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import Database from 'better-sqlite3';
import type { FlightEvent } from '../src/flight/event.ts';
import type { Append, FlightSummary } from '../src/wire/flight.ts';
import { stationRecordsIn, type StationRecords } from './station-records.ts';

type WireEvent = Append['events'][number];

/** An event as it is sent on: its place in the order of arrival, and its JSON text. */
export interface Arrival {
  readonly arrival: number;
  readonly body: string;
}

/** What became of an append. A conflict (the same id with other content) leaves the record untouched. */
export type Appending =
  | { readonly kind: 'appended'; readonly added: number; readonly known: number }
  | { readonly kind: 'conflict'; readonly index: number; readonly id: string };

/** The durable record of all flights. */
export interface Records {
  /** False when the flight was there already; its name then stays. */
  readonly createFlight: (id: string, name: string, atMs: number) => boolean;
  /** Newest first. */
  readonly flights: () => readonly FlightSummary[];
  readonly flight: (id: string) => FlightSummary | null;
  /** Returns only when the events are on the disk. All of them or none. */
  readonly append: (flightId: string, events: readonly WireEvent[]) => Appending;
  /** Place of an event in the order of arrival; null when there is no such event in this flight. */
  readonly arrivalOf: (flightId: string, eventId: string) => number | null;
  /** Events that arrived after a place, in the order of arrival. */
  readonly arrivedAfter: (flightId: string, arrival: number, limit: number) => readonly Arrival[];
  /** Events that arrived after a place, ordered by time, then id. */
  readonly inOrderAfter: (flightId: string, arrival: number) => readonly FlightEvent[];
  /** The library of stations, in the same file. */
  readonly stations: StationRecords;
  readonly close: () => void;
}

/** Marks the file as ours ("SpRa"), so that no other program's database is touched. */
const APPLICATION_ID = 0x53705261;
const SCHEMA_VERSION = 2;

const SCHEMA = `
  CREATE TABLE flight (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    created_at_ms INTEGER NOT NULL
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE event (
    arrival INTEGER PRIMARY KEY AUTOINCREMENT,
    flight_id TEXT NOT NULL REFERENCES flight (id),
    id TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    body TEXT NOT NULL,
    UNIQUE (flight_id, id)
  ) STRICT;
  CREATE INDEX event_by_arrival ON event (flight_id, arrival);
  CREATE INDEX event_by_time ON event (flight_id, at_ms, id);
`;

/** Added in version 2. */
const STATION_SCHEMA = `
  CREATE TABLE station (
    id TEXT PRIMARY KEY,
    body TEXT NOT NULL
  ) STRICT, WITHOUT ROWID;
`;

const SUMMARY = `
  SELECT flight.id, flight.name, created_at_ms AS createdAtMs, count(event.id) AS eventCount,
    min(at_ms) AS firstAtMs, max(at_ms) AS lastAtMs
  FROM flight LEFT JOIN event ON event.flight_id = flight.id
`;

/**
 * Opens the record under a directory, which is made when missing.
 *
 * Throws an error that says in words what is wrong with the directory or the file. The file is held by
 * one server at a time: two that append to one file could not both tell their followers of every event.
 */
export function openRecords(dataDir: string): Records {
  const file = path.join(dataDir, 'flights.sqlite');
  let database: Database.Database | undefined;
  try {
    mkdirSync(dataDir, { recursive: true });
    database = new Database(file, { timeout: 1500 });
    prepareFile(database, file);
    return recordsIn(database);
  } catch (error) {
    database?.close();
    throw new Error(whatIsWrong(error, dataDir, file), { cause: error });
  }
}

function prepareFile(database: Database.Database, file: string): void {
  database.pragma('locking_mode = EXCLUSIVE');
  database.pragma('journal_mode = WAL');
  // FULL: a commit returns when the log is on the disk, so what was answered survives a power cut.
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  const verdict = database.pragma('quick_check(1)', { simple: true });
  if (verdict !== 'ok') throw new Error(`${file} is damaged (${String(verdict)})`);
  const owner = database.pragma('application_id', { simple: true });
  const version = database.pragma('user_version', { simple: true }) as number;
  const tables = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get();
  if (tables === 0) {
    database.transaction(() => {
      database.exec(SCHEMA);
      database.exec(STATION_SCHEMA);
      database.pragma(`application_id = ${APPLICATION_ID}`);
      database.pragma(`user_version = ${SCHEMA_VERSION}`);
    })();
  } else if (owner !== APPLICATION_ID) {
    throw new Error(`${file} belongs to another program`);
  } else if (version > SCHEMA_VERSION) {
    throw new Error(`${file} was written by a newer version (schema ${version})`);
  } else if (version === 1) {
    database.transaction(() => {
      database.exec(STATION_SCHEMA);
      database.pragma(`user_version = ${SCHEMA_VERSION}`);
    })();
  }
}

function whatIsWrong(error: unknown, dataDir: string, file: string): string {
  const code = (error as { code?: string }).code ?? '';
  const message = error instanceof Error ? error.message : String(error);
  if (code === 'SQLITE_BUSY') return `Another server is using ${file}. Stop it first.`;
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT'))
    return `${file} is damaged or not a record of flights. Move it away (do not delete it) and start again.`;
  if (
    /^E[A-Z]+$/.test(code) ||
    code.startsWith('SQLITE_CANTOPEN') ||
    code.startsWith('SQLITE_READONLY')
  )
    return `DATA_DIR ${dataDir} cannot be written (${message}). Choose another directory.`;
  return `The records in DATA_DIR ${dataDir} cannot be opened: ${message}.`;
}

function recordsIn(database: Database.Database): Records {
  const insertFlight = database.prepare<[string, string, number]>(
    'INSERT INTO flight (id, name, created_at_ms) VALUES (?, ?, ?) ON CONFLICT (id) DO NOTHING',
  );
  const insertEvent = database.prepare<[string, string, number, string]>(
    'INSERT INTO event (flight_id, id, at_ms, body) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING',
  );
  const bodyOf = database
    .prepare<[string, string], string>('SELECT body FROM event WHERE flight_id = ? AND id = ?')
    .pluck();
  const all = database.prepare<[], FlightSummary>(
    `${SUMMARY} GROUP BY flight.id ORDER BY created_at_ms DESC, flight.id DESC`,
  );
  const one = database.prepare<[string], FlightSummary>(
    `${SUMMARY} WHERE flight.id = ? GROUP BY flight.id`,
  );
  const arrivalOf = database
    .prepare<[string, string], number>('SELECT arrival FROM event WHERE flight_id = ? AND id = ?')
    .pluck();
  const arrivedAfter = database.prepare<[string, number, number], Arrival>(
    'SELECT arrival, body FROM event WHERE flight_id = ? AND arrival > ? ORDER BY arrival LIMIT ?',
  );
  const inOrderAfter = database
    .prepare<[string, number], string>(
      'SELECT body FROM event WHERE flight_id = ? AND arrival > ? ORDER BY at_ms, id',
    )
    .pluck();

  const appendAll = database.transaction((flightId: string, events: readonly WireEvent[]) => {
    let added = 0;
    // A batch arrives in the order of its moments, whatever the order in which it was written down.
    for (const event of events.toSorted(byMoment)) {
      const body = JSON.stringify(event);
      const isNew = insertEvent.run(flightId, event.id, event.atMs, body).changes === 1;
      if (isNew) added += 1;
      else if (!isSameContent(bodyOf.get(flightId, event.id), body)) throw new Conflict(event);
    }
    return { kind: 'appended', added, known: events.length - added } as const;
  });

  return {
    createFlight: (id, name, atMs) => insertFlight.run(id, name, atMs).changes === 1,
    flights: () => all.all(),
    flight: (id) => one.get(id) ?? null,
    append: (flightId, events) => {
      try {
        return appendAll.immediate(flightId, events);
      } catch (error) {
        if (!(error instanceof Conflict)) throw error;
        return { kind: 'conflict', index: events.indexOf(error.event), id: error.event.id };
      }
    },
    arrivalOf: (flightId, eventId) => arrivalOf.get(flightId, eventId) ?? null,
    arrivedAfter: (flightId, arrival, limit) => arrivedAfter.all(flightId, arrival, limit),
    inOrderAfter: (flightId, arrival) =>
      inOrderAfter.all(flightId, arrival).map((body) => JSON.parse(body) as FlightEvent),
    stations: stationRecordsIn(database),
    close: () => {
      database.close();
    },
  };
}

/** Rolls a transaction back: this event's id is recorded already, with other content. */
class Conflict extends Error {
  readonly event: WireEvent;
  constructor(event: WireEvent) {
    super('conflict');
    this.event = event;
  }
}

function byMoment(one: WireEvent, other: WireEvent): number {
  if (one.atMs !== other.atMs) return one.atMs - other.atMs;
  return one.id < other.id ? -1 : Number(one.id > other.id);
}

function isSameContent(recorded: string | undefined, given: string): boolean {
  if (recorded === undefined) return false;
  return recorded === given || isDeepStrictEqual(JSON.parse(recorded), JSON.parse(given));
}
