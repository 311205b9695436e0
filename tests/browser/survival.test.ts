import { readdirSync, readFileSync } from 'node:fs';
import { chromium, type Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { flyWords, inSheet, openSheet, sheet } from './page-words.ts';
import { giveByTyping, nowMs, readingCounts, shownHeading, startDemo } from './pilot.ts';
import { LAUNCH, noteFaults, ownDir, SERVER_GONE, setStage } from './stage.ts';

const stage = setStage();

const panelAt = (dmeNm: number, needleDots = 1) =>
  ({ headingDeg: 115, courseSetDeg: 112, needleDots, flag: 'TO', dmeNm }) as const;

/** In flight, with readings at these distances half a minute apart. */
async function inFlight(page: Page, distancesNm: readonly number[]): Promise<void> {
  await startDemo(page);
  for (const dmeNm of distancesNm) {
    await giveByTyping(page, panelAt(dmeNm));
    await page.clock.fastForward(30_000);
  }
}

/** What the pilot flies by: heading, words, distance to go. */
async function stands(page: Page): Promise<{ heading: number; said: string; toGoNm: number }> {
  const words = flyWords(page);
  await words.heading.waitFor();
  return {
    heading: await shownHeading(page),
    said: (await words.said.textContent()) ?? '',
    toGoNm: Number(await words.toGo.textContent()),
  };
}

/** The same answer; the distance has gone on by what was flown in the seconds between. */
function expectSame(
  after: Awaited<ReturnType<typeof stands>>,
  before: Awaited<ReturnType<typeof stands>>,
): void {
  expect(after.heading).toBe(before.heading);
  expect(after.said).toBe(before.said);
  expect(Math.abs(after.toGoNm - before.toGoNm)).toBeLessThan(0.3);
}

const flightId = (page: Page): string => new URL(page.url()).hash.split('/').at(-1) ?? '';

interface Recorded {
  readonly id: string;
  readonly kind: string;
  readonly dmeNm?: number;
}

/** The flight as the server has recorded it, over HTTP. */
async function onServer(id: string): Promise<readonly Recorded[]> {
  const answer = await fetch(`${stage.address}/api/flights/${id}/events`);
  const { events } = (await answer.json()) as { readonly events: readonly Recorded[] };
  return events;
}

const distances = (events: readonly Recorded[]): readonly (number | undefined)[] =>
  events.filter(({ kind }) => kind === 'reading').map(({ dmeNm }) => dmeNm);

/** The page is kept on the device and governs its own reloads from here on. */
async function keptOnDevice(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null)
      await new Promise((resolve) => {
        navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true });
      });
  });
}

const savedEverywhere = (page: Page): Promise<void> =>
  flyWords(page).savedState.filter({ hasText: 'saved here and on the server' }).waitFor();

describe('a flight goes on exactly where it was', () => {
  test('after the page is loaded again in mid-flight', async () => {
    const page = await stage.open();
    await inFlight(page, [11.2, 10.5, 9.8]);
    const before = await stands(page);
    await page.reload();
    expectSame(await stands(page), before);
    await readingCounts(page, 3);
    await giveByTyping(page, panelAt(9.0));
    await readingCounts(page, 4);
  });

  test('after the server was killed: the page flies on, loads again without it, and catches up', async () => {
    const page = await stage.open();
    await inFlight(page, [11.2, 10.5]);
    await keptOnDevice(page);
    await savedEverywhere(page);

    stage.expectFault(SERVER_GONE);
    await stage.served.end('SIGKILL');
    await giveByTyping(page, panelAt(9.8));
    await flyWords(page).savedState.filter({ hasText: 'saved on this device' }).waitFor();
    const before = await stands(page);
    await page.reload();
    expectSame(await stands(page), before);
    await readingCounts(page, 3);
    await giveByTyping(page, panelAt(9.0));
    await readingCounts(page, 4);

    await stage.restartServer();
    await page.clock.fastForward(11_000);
    await savedEverywhere(page);
    const events = await onServer(flightId(page));
    expect(distances(events)).toEqual([11.2, 10.5, 9.8, 9]);
    expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
  });

  test('after the browser was killed: opened anew, it has every reading', async () => {
    const profile = ownDir();
    const faults: string[] = [];
    const first = await chromium.launchPersistentContext(profile, LAUNCH);
    noteFaults(first, faults);
    const page = await stage.open({ context: first, hasOwnClock: false });
    await readCautions(page);
    await startDemo(page);
    await giveByTyping(page, panelAt(11.2));
    await giveByTyping(page, panelAt(11.1));
    const before = await stands(page);
    const address = page.url();
    const closed = new Promise((resolve) => first.once('close', resolve));
    process.kill(pidOf(profile), 'SIGKILL');
    await closed;

    const second = await chromium.launchPersistentContext(profile, LAUNCH);
    noteFaults(second, faults);
    const again = await second.newPage();
    await again.goto(address);
    expectSame(await stands(again), before);
    await readingCounts(again, 2);
    await second.close();
    expect(faults).toEqual([]);
  });
});

describe('a second screen, opened by the address that the flight gives', () => {
  test('follows live over the WebSocket, and what is given there comes back', async () => {
    const page = await stage.open();
    await inFlight(page, [11.2, 10.5]);
    await savedEverywhere(page);
    await flyWords(page).flight.click();
    const address = await sheet(page, /Demo/).getByText(/^http/).textContent();
    await inSheet(page, 'Close').click();
    await openSheet(page).waitFor({ state: 'detached' });

    const other = await stage.open({ startMs: await nowMs(page) });
    const frames: string[] = [];
    other.on('websocket', (socket) => {
      socket.on('framereceived', ({ payload }) => frames.push(payload.toString()));
    });
    await other.goto(address ?? '');
    await other.reload();
    expectSame(await stands(other), await stands(page));
    await savedEverywhere(other);

    await giveByTyping(page, panelAt(9.8, 0.5));
    await readingCounts(other, 3);
    // It shows what there is to say and leaves the saying to the first one.
    expect(await saidOn(other)).toEqual([]);
    expectSame(await stands(other), await stands(page));
    expect(frames.some((frame) => frame.includes('"dmeNm":9.8'))).toBe(true);

    await giveByTyping(other, panelAt(9.0, 0.5));
    await readingCounts(page, 4);
    expectSame(await stands(page), await stands(other));
  });
});

async function saidOn(page: Page): Promise<readonly string[]> {
  await flyWords(page).spoken.click();
  const log = sheet(page, 'Spoken so far');
  await log.waitFor();
  const said = await log.getByRole('listitem').allTextContents();
  await inSheet(page, 'Close').click();
  return said;
}

async function readCautions(page: Page): Promise<void> {
  await inSheet(page, 'I have read this').click();
  await openSheet(page).waitFor({ state: 'detached' });
}

/** The main process of the browser that was started on this profile: ours, and no other. */
function pidOf(profile: string): number {
  for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    let command: string;
    try {
      command = readFileSync(`/proc/${pid}/cmdline`, 'utf8');
    } catch {
      continue;
    }
    if (command.includes(`--user-data-dir=${profile}`) && !command.includes('--type='))
      return Number(pid);
  }
  throw new Error('The browser cannot be found.');
}
