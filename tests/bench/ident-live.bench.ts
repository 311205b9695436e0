// What the front end of the ear costs in Chromium's own audio thread: rendered offline, as fast as it can,
// with its blocks on their way to a listener and back; the same rendering without it is taken off.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { report } from './report.ts';

const ROOT = path.join(import.meta.dirname, '..', '..');
const BROWSER = process.env['BROWSER_PATH'] ?? '/usr/bin/chromium';
const RUNS = 7;

if (!existsSync(BROWSER)) throw new Error(`There is no browser at ${BROWSER}: set BROWSER_PATH.`);

const worklet = readdirSync(path.join(ROOT, 'build/page/assets')).find((each) =>
  each.startsWith('front-end.worklet'),
);
if (worklet === undefined) throw new Error('The front end is not in build/page: build it first.');

interface Rendered {
  /** Seconds that a minute of sound took. */
  readonly tookS: number;
  readonly blocks: number;
}

/** Runs in the page; `module` is null: without the front end. */
async function render(module: string | null): Promise<Rendered> {
  const context = new OfflineAudioContext(1, 60 * 48_000, 48_000);
  const tone = new OscillatorNode(context, { frequency: 1020 });
  let blocks = 0;
  if (module === null) tone.connect(context.destination);
  else {
    await context.audioWorklet.addModule(module);
    const node = new AudioWorkletNode(context, 'ident-front-end');
    const { port1, port2 } = new MessageChannel();
    node.port.postMessage({ blocks: port1 }, [port1]);
    port2.onmessage = ({ data }: MessageEvent<Float32Array<ArrayBuffer>>) => {
      blocks += 1;
      port2.postMessage(data, [data.buffer]);
    };
    tone.connect(node).connect(context.destination);
    // The port has to be there before the rendering starts.
    await new Promise((resolve) => setTimeout(resolve, 300));
  }
  tone.start();
  const startMs = performance.now();
  await context.startRendering();
  const tookS = (performance.now() - startMs) / 1000;
  await new Promise((resolve) => setTimeout(resolve, 200));
  return { tookS, blocks };
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
  const page = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
  await page.goto(address);
  const shares: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const without = await page.evaluate(render, null);
    const { tookS, blocks } = await page.evaluate(render, `/assets/${worklet}`);
    if (blocks < 1800) throw new Error(`only ${blocks} blocks of a minute came through`);
    shares.push((100 * (tookS - without.tookS)) / 60);
  }
  report({
    name: 'front end of the ear in the audio thread of Chromium, 48 kHz, share of a core',
    // The least of them: other programs of the machine only add.
    value: Math.min(...shares),
    unit: '%',
    goal: 2,
  });
} finally {
  await browser.close();
  server.kill('SIGTERM');
  await new Promise((resolve) => server.once('close', resolve));
  rmSync(dataDir, { recursive: true, force: true });
}
