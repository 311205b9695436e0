// The cost of one answer after 200 readings: in Node, and in Chromium as it is and with its processor throttled.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { runInThisContext } from 'node:vm';
import { chromium } from 'playwright-core';
import { build } from 'vite';
import type { answerCostMs as costInThisProcess } from './answer-cost.ts';
import { report } from './report.ts';

const BROWSER = process.env['BROWSER_PATH'] ?? '/usr/bin/chromium';
const GOAL_MS = 2;
/** A tablet of some years ago against this machine. */
const THROTTLED = 4;

/** The module as a script that leaves what it exports in `bench`. */
async function script(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      target: 'es2023',
      lib: {
        entry: path.join(import.meta.dirname, 'answer-cost.ts'),
        formats: ['iife'],
        name: 'bench',
      },
    },
  });
  const [first = null] = [built].flat();
  if (first === null || !('output' in first)) throw new Error('The script was not built.');
  return first.output[0].code;
}

if (!existsSync(BROWSER)) throw new Error(`There is no browser at ${BROWSER}: set BROWSER_PATH.`);
const code = await script();
// Built, as the server runs it: what reads TypeScript for the benches costs time in every call.
const { answerCostMs } = runInThisContext(`${code}\n;bench`) as {
  answerCostMs: typeof costInThisProcess;
};
answerCostMs();
report({
  name: 'one answer after 200 readings, Node on one core',
  value: answerCostMs(),
  unit: 'ms',
  goal: GOAL_MS,
});
const browser = await chromium.launch({ executablePath: BROWSER, args: ['--no-sandbox'] });
try {
  const page = await browser.newPage();
  const devtools = await page.context().newCDPSession(page);
  await page.addScriptTag({ content: code });
  const cost = (): Promise<number> => page.evaluate('bench.answerCostMs()');
  await cost();
  for (const rate of [1, THROTTLED]) {
    await devtools.send('Emulation.setCPUThrottlingRate', { rate });
    const how = rate === 1 ? 'Chromium' : `Chromium, processor throttled ${rate} times`;
    report({ name: `one answer after 200 readings, ${how}`, value: await cost(), unit: 'ms' });
  }
} finally {
  await browser.close();
}
