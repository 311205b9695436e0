// Cold start of the built server: from the start of the process until the first answer.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { aircraft, leg, note, reading } from '../server/examples.ts';
import { median, report } from './report.ts';

const RUNS = 5;
const ROOT = path.join(import.meta.dirname, '..', '..');

interface Started {
  readonly address: string;
  readonly tookMs: number;
  readonly end: () => Promise<void>;
}

async function start(dataDir: string): Promise<Started> {
  const startMs = performance.now();
  const child = spawn(process.execPath, [path.join(ROOT, 'build/server/main.js')], {
    env: { ...process.env, PORT: '0', DATA_DIR: dataDir },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise<string>((resolve, reject) => {
    child.once('close', () => {
      reject(new Error('the server has ended'));
    });
    child.stdout.on('data', (chunk: Buffer) => {
      const found = /http:\S+/.exec(chunk.toString('utf8'))?.[0];
      if (found !== undefined) resolve(found);
    });
  });
  await fetch(`${address}/api/health`);
  const tookMs = performance.now() - startMs;
  const end = (): Promise<void> =>
    new Promise((resolve) => {
      child.once('close', () => {
        resolve();
      });
      child.kill('SIGTERM');
    });
  return { address, tookMs, end };
}

async function post(address: string, at: string, body: unknown): Promise<unknown> {
  const answer = await fetch(`${address}${at}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(await answer.text());
  return answer.json();
}

/** Median time of one call, milliseconds. */
async function callMs(times: number, make: (run: number) => Promise<unknown>): Promise<number> {
  const took: number[] = [];
  for (let run = 0; run < times; run += 1) {
    const startMs = performance.now();
    await make(run);
    took.push(performance.now() - startMs);
  }
  return median(took);
}

const dataDir = mkdtempSync(path.join(tmpdir(), 'spoken-radial-bench-'));
try {
  const starts: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const server = await start(dataDir);
    starts.push(server.tookMs);
    await server.end();
  }
  report({ name: 'server, cold start to first answer', value: median(starts), unit: 'ms' });

  const server = await start(dataDir);
  const asked = { leg, aircraft, dateIso: '2026-11-25', readings: [reading] };
  const advice = await callMs(200, () => post(server.address, '/api/advice', asked));
  report({ name: 'POST /api/advice, one reading', value: advice, unit: 'ms' });
  const { id } = (await post(server.address, '/api/flights', { name: 'bench' })) as { id: string };
  const appending = await callMs(200, (run) =>
    post(server.address, `/api/flights/${id}/events`, { events: [note(run)] }),
  );
  report({ name: 'append of one event, on the disk', value: appending, unit: 'ms' });
  await server.end();
} finally {
  rmSync(dataDir, { recursive: true, force: true });
}
