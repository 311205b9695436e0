// How long a file of navaids near the limit takes the built server, and how long others wait for it meanwhile.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { report } from './report.ts';

const ROOT = path.join(import.meta.dirname, '..', '..');
const MOST_BYTES = 23 * 1024 * 1024;

/** The open navaids of the world over and over, each time under other numbers. */
function largeFile(): { readonly csv: string; readonly rows: number } {
  const [head = '', ...lines] = readFileSync('../shared/data/navaids.csv', 'utf8')
    .trimEnd()
    .split('\n');
  const rows = [head];
  for (let bytes = 0; bytes < MOST_BYTES;) {
    const line = lines[rows.length % lines.length] ?? '';
    const row = `${1_000_000 + rows.length}${line.slice(line.indexOf(','))}`;
    bytes += Buffer.byteLength(row) + 1;
    rows.push(row);
  }
  return { csv: rows.join('\n'), rows: rows.length - 1 };
}

const dataDir = mkdtempSync(path.join(tmpdir(), 'spoken-radial-import-'));
const child = spawn(process.execPath, [path.join(ROOT, 'build/server/main.js')], {
  env: { ...process.env, PORT: '0', DATA_DIR: dataDir },
  stdio: ['ignore', 'pipe', 'inherit'],
});
const address = await new Promise<string>((resolve) => {
  child.stdout.on('data', (chunk: Buffer) => {
    const found = /http:\S+/.exec(chunk.toString('utf8'))?.[0];
    if (found !== undefined) resolve(found);
  });
});
const { csv, rows } = largeFile();
const state = { isDone: false };
const startMs = performance.now();
const importing = fetch(`${address}/api/stations/import`, {
  method: 'POST',
  headers: { 'content-type': 'text/csv' },
  body: csv,
}).then(async (answer) => {
  state.isDone = true;
  if (!answer.ok) throw new Error(await answer.text());
});
let slowestMs = 0;
let answers = 0;
while (!state.isDone) {
  const askedMs = performance.now();
  await fetch(`${address}/api/health`).then((answer) => answer.text());
  slowestMs = Math.max(slowestMs, performance.now() - askedMs);
  answers += 1;
}
await importing;
report({
  name: 'import of a file near 24 MB by the server',
  value: (performance.now() - startMs) / 1000,
  unit: 's',
  n: rows,
});
report({
  name: 'slowest other answer during that import',
  value: slowestMs,
  unit: 'ms',
  n: answers,
});
await new Promise((resolve) => {
  child.once('close', resolve);
  child.kill('SIGTERM');
});
rmSync(dataDir, { recursive: true, force: true });
