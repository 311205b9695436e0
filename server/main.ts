import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { buildApp } from './app.ts';
import { openRecords } from './records.ts';
import { settingsFrom } from './settings.ts';

const EXIT = { settings: 2, records: 3, listening: 4 } as const;

/** Longest that a clean end may take; everything that was answered is on the disk by then anyway. */
const LONGEST_END_MS = 4000;

function orExit<Value>(code: number, make: () => Value): Value {
  try {
    return make();
  } catch (error) {
    return exit(code, error);
  }
}

function exit(code: number, error: unknown): never {
  console.error(error instanceof Error ? error.message : String(error));
  process.exit(code);
}

/** The project's root: from `server/` and from `build/server/` alike. */
function rootDir(): string {
  let dir = import.meta.dirname;
  while (!existsSync(path.join(dir, 'package.json'))) dir = path.dirname(dir);
  return dir;
}

/** Told before the records are opened: a second server would else complain about the records. */
function portIsFree(port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      reject(new Error(whyNotListening(error, port, host)));
    });
    probe.listen(port, host, () => {
      probe.close(() => {
        resolve();
      });
    });
  });
}

function whyNotListening(error: NodeJS.ErrnoException, port: number, host: string): string {
  if (error.code === 'EADDRINUSE')
    return `Port ${port} is in use. Stop the other program or choose another port: PORT=4781 npm start`;
  if (error.code === 'EACCES') return `Port ${port} may not be used here. Choose one above 1023.`;
  return `Cannot listen on ${host}:${port} (${error.message}).`;
}

const settings = orExit(EXIT.settings, () => settingsFrom(process.env));
const { host, dataDir } = settings;
await portIsFree(settings.port, host).catch((error: unknown) => exit(EXIT.listening, error));
const records = orExit(EXIT.records, () => openRecords(dataDir));
const root = rootDir();
const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
  version: string;
};
const app = await buildApp({
  records,
  pageDir: path.join(root, 'build', 'page'),
  version,
  host,
  now: Date.now,
});

async function end(): Promise<void> {
  setTimeout(() => process.exit(0), LONGEST_END_MS).unref();
  await app.close();
  records.close();
  process.exit(0);
}
for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => void end());

await app
  .listen({ port: settings.port, host })
  .catch((error: unknown) =>
    exit(EXIT.listening, whyNotListening(error as NodeJS.ErrnoException, settings.port, host)),
  );
const { port } = app.server.address() as AddressInfo;
console.log(`Spoken Radial is ready: http://${host.includes(':') ? `[${host}]` : host}:${port}`);
