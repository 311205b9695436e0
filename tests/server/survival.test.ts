import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { idOf, note } from './examples.ts';
import { openSocket } from './follower.ts';
import { endServer, get, ownDir, post, spawnServer } from './serve.ts';

const flight = { name: 'survivor', id: idOf(1) };
const at = `/api/flights/${flight.id}/events`;

describe('a server that is killed (kill -9) and started again on the same records', () => {
  it('has everything that was acknowledged, and followers go on after what they had', async () => {
    const dataDir = ownDir();
    const first = await spawnServer({ DATA_DIR: dataDir });
    await post(first.port, '/api/flights', flight);
    let acknowledged = 0;
    const appending = (async () => {
      for (;;) {
        await post(first.port, at, { events: [note(acknowledged)] });
        acknowledged += 1;
        if (acknowledged === 40) void endServer(first, 'SIGKILL');
      }
    })();
    await expect(appending).rejects.toThrow();
    expect(acknowledged).toBeGreaterThanOrEqual(40);

    const second = await spawnServer({ DATA_DIR: dataDir });
    const { json } = await get(second.port, at);
    const { events } = json as { events: unknown[] };
    const expected = Array.from({ length: acknowledged }, (_, number) => note(number));
    expect(events.slice(0, acknowledged)).toEqual(expected);
    // An event that was on its way may have been recorded without its answer getting through.
    expect(events.length).toBeLessThanOrEqual(acknowledged + 1);

    const follower = await openSocket(second.port, flight.id);
    follower.send({ afterId: idOf(acknowledged - 2) });
    expect((await follower.until(1))[0]).toEqual(note(acknowledged - 1));
    expect((await post(second.port, at, { events: expected })).json).toEqual({
      added: 0,
      known: acknowledged,
    });
  });
});

describe('a server that is told to end', () => {
  it.each(['SIGTERM', 'SIGINT'] as const)(
    '%s: closes its sockets, exits 0 and leaves the records whole',
    async (signal) => {
      const dataDir = ownDir();
      const server = await spawnServer({ DATA_DIR: dataDir });
      await post(server.port, '/api/flights', flight);
      await post(server.port, at, { events: [note(1)] });
      const follower = await openSocket(server.port, flight.id);
      follower.send({ afterId: null });
      await follower.until(1);
      expect(await endServer(server, signal)).toBe(0);
      expect(await follower.closed).toBe(1001);
      const database = new Database(path.join(dataDir, 'flights.sqlite'), { readonly: true });
      expect(database.prepare('SELECT count(*) FROM event').pluck().get()).toBe(1);
      database.close();
    },
  );
});

describe('a server that cannot start says why and exits with a code of its own', () => {
  it('when the port is in use', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await new Promise((resolve) => other.once('listening', resolve));
    const { port } = other.address() as AddressInfo;
    const starting = spawnServer({ DATA_DIR: ownDir(), PORT: String(port) });
    await expect(starting).rejects.toThrow(new RegExp(`exit 4: Port ${port} is in use`));
    other.close();
  });

  it('when the port is no port', async () => {
    const starting = spawnServer({ DATA_DIR: ownDir(), PORT: 'radio' });
    await expect(starting).rejects.toThrow(/exit 2: PORT must be a number/);
  });

  it('when the records are damaged, and leaves them alone', async () => {
    const dataDir = ownDir();
    writeFileSync(path.join(dataDir, 'flights.sqlite'), 'this is no database, '.repeat(500));
    await expect(spawnServer({ DATA_DIR: dataDir })).rejects.toThrow(/exit 3: .*is damaged/);
  });

  it('when the records belong to another program', async () => {
    const dataDir = ownDir();
    const database = new Database(path.join(dataDir, 'flights.sqlite'));
    database.exec('CREATE TABLE recipe (name TEXT)');
    database.close();
    await expect(spawnServer({ DATA_DIR: dataDir })).rejects.toThrow(/exit 3: .*another program/);
  });

  it('when DATA_DIR cannot be a directory', async () => {
    const dataDir = path.join(ownDir(), 'file');
    writeFileSync(dataDir, '');
    const starting = spawnServer({ DATA_DIR: path.join(dataDir, 'data') });
    await expect(starting).rejects.toThrow(/exit 3: DATA_DIR .* cannot be written/);
  });

  it('when another server is using the records', async () => {
    const dataDir = path.join(ownDir(), 'shared');
    mkdirSync(dataDir);
    await spawnServer({ DATA_DIR: dataDir });
    await expect(spawnServer({ DATA_DIR: dataDir })).rejects.toThrow(/exit 3: Another server/);
  });
});
