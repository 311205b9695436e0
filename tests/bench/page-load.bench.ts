// What Chromium really fetches for the first page load, and how long it takes: a fresh browser, no cache.
import type { Browser } from 'playwright-core';
import { report } from './report.ts';
import { withServedPage } from './served-page.ts';

const GOAL_KB = 100;

/** The Fly page of a flight that another device has begun; what is asked of `/api` is not of the page. */
async function flyPageBytes(browser: Browser, address: string): Promise<number> {
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

await withServedPage(async (browser, address) => {
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
    value: (await flyPageBytes(browser, address)) / 1000,
    unit: 'kB',
    goal: GOAL_KB,
  });
});
