// What Chromium really fetches for the first page load, and how long it takes: a fresh browser, no cache.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { report } from './report.ts';

const ROOT = path.join(import.meta.dirname, '..', '..');
const BROWSER = process.env['BROWSER_PATH'] ?? '/usr/bin/chromium';
const GOAL_KB = 100;

if (!existsSync(BROWSER)) throw new Error(`There is no browser at ${BROWSER}: set BROWSER_PATH.`);
/** The Fly page of a flight that another device has begun; what is asked of `/api` is not of the page. */
async function flyPageBytes(address: string): Promise<number> {
  const begun = await browser.newPage();
  await begun.addInitScript(() => {
    localStorage.setItem('spoken-radial.settings', JSON.stringify({ cautionsReadAtMs: 1 }));
  });
  await begun.goto(address);
  await begun.getByRole('button', { name: 'Fly the demo' }).click();
  await begun.getByText('saved here and on the server').waitFor();
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Network.enable');
  const ofInterface = new Set<string>();
  let bytes = 0;
  devtools.on('Network.responseReceived', ({ requestId, response }) => {
    if (new URL(response.url).pathname.startsWith('/api/')) ofInterface.add(requestId);
  });
  devtools.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    if (!ofInterface.has(requestId)) bytes += encodedDataLength;
  });
  await page.goto(begun.url(), { waitUntil: 'networkidle' });
  await page.getByRole('region', { name: 'Reading' }).waitFor();
  return bytes;
}

const dataDir = mkdtempSync(path.join(tmpdir(), 'spoken-radial-bench-'));
const server = spawn(process.execPath, [path.join(ROOT, 'build/server/main.js')], {
  env: { ...process.env, PORT: '0', DATA_DIR: dataDir },
  stdio: ['ignore', 'pipe', 'inherit'],
});
const browser = await chromium.launch({ executablePath: BROWSER, args: ['--no-sandbox'] });
try {
  const address = await new Promise<string>((resolve) => {
    server.stdout.on('data', (chunk: Buffer) => {
      const found = /http:\S+/.exec(chunk.toString('utf8'))?.[0];
      if (found !== undefined) resolve(found);
    });
  });
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Network.enable');
  let bytes = 0;
  devtools.on('Network.loadingFinished', ({ encodedDataLength }) => {
    bytes += encodedDataLength;
  });
  await page.goto(address, { waitUntil: 'networkidle' });
  report({
    name: 'first page load in Chromium, with headers',
    value: bytes / 1000,
    unit: 'kB',
    goal: GOAL_KB,
  });
  const paintMs = await page.evaluate(
    () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? NaN,
  );
  report({ name: 'first contentful paint in Chromium', value: paintMs, unit: 'ms' });
  report({
    name: 'Fly page opened directly in Chromium, its files with headers',
    value: (await flyPageBytes(address)) / 1000,
    unit: 'kB',
    goal: GOAL_KB,
  });
} finally {
  await browser.close();
  server.kill('SIGTERM');
  rmSync(dataDir, { recursive: true, force: true });
}
