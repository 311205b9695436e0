// What the front end of the ear costs in Chromium's own audio thread: rendered offline, as fast as it can,
// with its blocks on their way to a listener and back; the same rendering without it is taken off.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { report } from './report.ts';
import { withServedPage } from './served-page.ts';

const ROOT = path.join(import.meta.dirname, '..', '..');
const RUNS = 7;

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

await withServedPage(async (browser, address) => {
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
});
