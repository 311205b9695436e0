import path from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openRecords } from '../../server/records.ts';
import { ownDir } from './serve.ts';

/** The file as version 1 of the server made it, before it kept stations. */
const VERSION_1 = `
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
  PRAGMA application_id = 0x53705261;
  PRAGMA user_version = 1;
`;

const FLIGHTS = ['a', 'b', 'c'];
const note = (id: string, atMs: number, text: string) => ({
  id,
  atMs,
  kind: 'note' as const,
  text,
});
/** Two of one moment, one written down late: their order is part of what is recorded. */
const NOTES = [note('n2', 2000, 'TO'), note('n1', 1000, 'Täxi "6"'), note('n3', 2000, 'FROM')];

function versionOne(): string {
  const dir = ownDir();
  const database = new Database(path.join(dir, 'flights.sqlite'));
  database.pragma('journal_mode = WAL');
  database.exec(VERSION_1);
  const flight = database.prepare('INSERT INTO flight VALUES (?, ?, ?)');
  const event = database.prepare(
    'INSERT INTO event (flight_id, id, at_ms, body) VALUES (?, ?, ?, ?)',
  );
  FLIGHTS.forEach((id, at) => flight.run(id, `Flight ${id}`, at + 1));
  for (const id of FLIGHTS)
    for (const each of NOTES) event.run(id, each.id, each.atMs, JSON.stringify(each));
  // A gap, as an event leaves that was refused: the numbers after it must not be given out again.
  database.exec(`UPDATE sqlite_sequence SET seq = 40 WHERE name = 'event'`);
  database.close();
  return dir;
}

function rowsOf(dir: string): {
  flights: unknown;
  events: unknown;
  version: unknown;
  tables: unknown;
} {
  const database = new Database(path.join(dir, 'flights.sqlite'), { readonly: true });
  const all = (sql: string): unknown => database.prepare(sql).all();
  const found = {
    flights: all('SELECT * FROM flight ORDER BY id'),
    events: all('SELECT * FROM event ORDER BY arrival'),
    version: database.pragma('user_version', { simple: true }),
    tables: all(`SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name`),
  };
  database.close();
  return found;
}

describe('a record of version 1', () => {
  it('keeps every flight and every event to the byte, and gains a place for stations', () => {
    const dir = versionOne();
    const before = rowsOf(dir);
    expect(before.version).toBe(1);
    openRecords(dir).close();
    const after = rowsOf(dir);
    expect(after.flights).toEqual(before.flights);
    expect(after.events).toEqual(before.events);
    expect(after.version).toBe(2);
    expect(JSON.stringify(after.tables)).toContain('station');
    expect(JSON.stringify(before.tables)).not.toContain('station');
  });

  it('is read, added to and searched as any other', () => {
    const records = openRecords(versionOne());
    expect(records.flights().map(({ id, eventCount }) => [id, eventCount])).toEqual([
      ['c', 3],
      ['b', 3],
      ['a', 3],
    ]);
    expect(records.inOrderAfter('b', 0).map(({ id }) => id)).toEqual(['n1', 'n2', 'n3']);
    expect(records.arrivedAfter('b', 0, 10).map(({ arrival }) => arrival)).toEqual([4, 5, 6]);
    expect(records.append('b', [note('n1', 1000, 'Täxi "6"'), note('n4', 3000, 'more')])).toEqual({
      kind: 'appended',
      added: 1,
      known: 1,
    });
    expect(records.arrivalOf('b', 'n4')).toBeGreaterThan(40);
    expect(records.stations.all().size).toBe(0);
    records.close();
  });

  it('is brought up once: opened again it is as it was left', () => {
    const dir = versionOne();
    openRecords(dir).close();
    const once = rowsOf(dir);
    openRecords(dir).close();
    expect(rowsOf(dir)).toEqual(once);
  });

  it('is left as it was when bringing it up fails half way', () => {
    const dir = versionOne();
    const database = new Database(path.join(dir, 'flights.sqlite'));
    // A table of that name makes the new one impossible.
    database.exec('CREATE TABLE station (other TEXT)');
    database.close();
    const before = rowsOf(dir);
    expect(() => openRecords(dir)).toThrow(/cannot be opened/);
    expect(rowsOf(dir)).toEqual(before);
  });
});

describe('a record of a version that is not known here', () => {
  it('is refused untouched, and says that it is newer', () => {
    const dir = versionOne();
    const database = new Database(path.join(dir, 'flights.sqlite'));
    database.pragma('user_version = 3');
    database.close();
    const before = rowsOf(dir);
    expect(() => openRecords(dir)).toThrow(/newer version \(schema 3\)/);
    expect(rowsOf(dir)).toEqual(before);
  });
});
