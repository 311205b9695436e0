import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser } from 'playwright-core';

const SERVER = path.join(import.meta.dirname, '..', '..', 'build/server/main.js');
const BROWSER = process.env['BROWSER_PATH'] ?? '/usr/bin/chromium';

/** Measures the built page, served by the built server with an empty store, in a fresh Chromium. */
export async function withServedPage(
  measure: (browser: Browser, address: string) => Promise<void>,
): Promise<void> {
  if (!existsSync(BROWSER)) {
    throw new Error(`There is no browser at ${BROWSER}: set BROWSER_PATH.`);
  }
  const dataDir = mkdtempSync(path.join(tmpdir(), 'spoken-radial-bench-'));
  const server = spawn(process.execPath, [SERVER], {
    env: { ...process.env, PORT: '0', DATA_DIR: dataDir },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = new Promise((resolve) => server.once('close', resolve));
  const browser = await chromium.launch({ executablePath: BROWSER, args: ['--no-sandbox'] });
  try {
    const address = await new Promise<string>((resolve) => {
      server.stdout.on('data', (chunk: Buffer) => {
        const found = /http:\S+/.exec(chunk.toString('utf8'))?.[0];
        if (found !== undefined) resolve(found);
      });
    });
    await measure(browser, address);
  } finally {
    await browser.close();
    server.kill('SIGTERM');
    await gone;
    rmSync(dataDir, { recursive: true, force: true });
  }
}
