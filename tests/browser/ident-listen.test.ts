import { truncateSync, writeFileSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { identWords } from './ident-words.ts';
import { ALLOWED, setSounds } from './microphone.ts';
import { flyWords, inSheet, openSheet, sheet } from './page-words.ts';
import { startDemo } from './pilot.ts';
import { setStage, type Opening } from './stage.ts';

// The sound comes from a generator that shares no code with the detector (tests/bench/ident-air.ts) and goes
// through Chromium's own microphone path: capture, resampling, AudioWorklet, worker.

const stage = setStage();
const sounds = setSounds();

/** Longer than two repeats and the loading of everything on a busy machine. */
const PATIENCE = { timeout: 60_000 };

const LISTEN: Opening = { hasOwnClock: false, at: '#/idents/listen' };

/** The page of a browser whose microphone hears a file, listening for an ident. */
async function listening(microphone: string, expected: string): Promise<Page> {
  const browser = await sounds.browser(microphone, ALLOWED);
  const page = await stage.open({ ...LISTEN, browser });
  const words = identWords(page);
  await words.expected.fill(expected);
  await words.listen.click();
  return page;
}

/** A page that has been given a recording. */
async function reading(file: string, expected: string): Promise<Page> {
  const page = await stage.open(LISTEN);
  const words = identWords(page);
  await words.expected.fill(expected);
  await words.file.setInputFiles(file);
  return page;
}

const clean = (): string =>
  sounds.clip('clean', { seed: 41, condition: 'awgn20', ident: 'QEV', repeats: 2, wpm: 7 });

const TWICE_IN_CABIN = { seed: 42, condition: 'cabin0', repeats: 2, wpm: 7 } as const;

describe('the microphone', () => {
  test('hears the expected ident: confirmed, with its letters, its tone and a picture', async () => {
    const file = sounds.clip('right', { ...TWICE_IN_CABIN, ident: 'QEV', toneHz: 1020 });
    const page = await listening(file, 'QEV');
    const words = identWords(page);
    await words.verdict.filter({ hasText: 'It sends QEV.' }).waitFor(PATIENCE);
    expect(await words.letters.textContent()).toBe('QEV');
    expect(Number.parseInt((await words.tone.textContent()) ?? '', 10)).toBeCloseTo(1020, -1);
    await page.getByRole('img', { name: /tone at 10[12]\d hertz.* letters Q E V/ }).waitFor();
    await words.stopListening.click();
    await words.listen.waitFor();
    expect(await words.verdict.textContent()).toContain('It sends QEV.');
  });

  test('hears another ident: different, what it is, and which station sends that', async () => {
    const file = sounds.clip('right', { ...TWICE_IN_CABIN, ident: 'QEV', toneHz: 1020 });
    const page = await listening(file, 'QXF');
    const words = identWords(page);
    await words.verdict.filter({ hasText: 'Not QXF: it sends QEV.' }).waitFor(PATIENCE);
    await page.getByText('Do not use this station.').waitFor();
    // The invented station of the demo.
    await page.getByRole('listitem').filter({ hasText: 'QEV on 113.35' }).waitFor();
  });

  test('hears noise alone: it cannot tell, and names no station', async () => {
    const file = sounds.clip('noise', { seed: 43, condition: 'none_noise', ident: null });
    const page = await listening(file, 'QEV');
    const words = identWords(page);
    await words.verdict.waitFor(PATIENCE);
    await page.waitForTimeout(10_000);
    // Not confirmed, not another ident, not a station without one: that takes half a minute.
    expect(await page.locator('.verdict.cannot-tell').count()).toBe(1);
    expect(await words.verdict.textContent()).not.toContain('It sends');
  });

  test('works with the server gone: the listener is kept on the device', async () => {
    const file = sounds.clip('right', { ...TWICE_IN_CABIN, ident: 'QEV', toneHz: 1020 });
    const browser = await sounds.browser(file, ALLOWED);
    const page = await stage.open({ ...LISTEN, browser });
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      while (navigator.serviceWorker.controller === null)
        await new Promise((resolve) => {
          navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true });
        });
    });
    await page.context().setOffline(true);
    stage.expectFault(/ERR_INTERNET_DISCONNECTED/);
    const words = identWords(page);
    await words.expected.fill('QEV');
    await words.listen.click();
    await words.verdict.filter({ hasText: 'It sends QEV.' }).waitFor(PATIENCE);
  });
});

describe('identifying in flight', () => {
  test('the tool hears the ident, the pilot confirms, and the flight keeps who heard it', async () => {
    const file = sounds.clip('right', { ...TWICE_IN_CABIN, ident: 'QEV', toneHz: 1020 });
    const browser = await sounds.browser(file, ALLOWED);
    const page = await stage.open({ hasOwnClock: false, browser });
    const words = flyWords(page);
    await startDemo(page);
    await words.identState.click();
    await sheet(page, /Identify QEV/).waitFor();
    await inSheet(page, 'Let the tool listen').click();
    await inSheet(page, 'Listen').click();
    await identWords(page).verdict.filter({ hasText: 'It sends QEV.' }).waitFor(PATIENCE);
    // It proposes; nothing is confirmed before the pilot says so.
    expect(await words.identState.textContent()).toContain('not confirmed');
    await inSheet(page, 'Ident confirmed').click();
    await openSheet(page).waitFor({ state: 'detached' });
    await words.identState.filter({ hasText: 'ident confirmed' }).waitFor();
    const id = new URL(page.url()).hash.split('/').at(-1) ?? '';
    await expect
      .poll(
        async () => {
          const answer = await fetch(`${stage.address}/api/flights/${id}/events`);
          const { events } = (await answer.json()) as { events: { kind: string; by?: string }[] };
          return events.find(({ kind }) => kind === 'ident')?.by;
        },
        { timeout: 15_000 },
      )
      .toBe('tool');
  });
});

describe('a recording', () => {
  test('dropped on the page is heard to its end', async () => {
    const page = await stage.open(LISTEN);
    const words = identWords(page);
    await words.expected.fill('QEV');
    const bytes = readFileSync(clean()).toString('base64');
    const dropped = await page.evaluateHandle((base64) => {
      const data = new DataTransfer();
      const content = Uint8Array.from(atob(base64), (each) => each.charCodeAt(0));
      data.items.add(new File([content], 'ident.wav', { type: 'audio/wav' }));
      return data;
    }, bytes);
    await page.dispatchEvent('h1', 'drop', { dataTransfer: dropped });
    await words.verdict.filter({ hasText: 'It sends QEV.' }).waitFor(PATIENCE);
    await page.getByText('Heard: ident.wav.').waitFor();
    // Q --.-  E .  V ...-: nine marks, twice.
    await page.getByRole('img', { name: /tone at \d+ hertz, 18 marks, letters Q E V/ }).waitFor();
  });

  test.each([
    ['8 bits', ['-b', '8']],
    ['24 bits', ['-b', '24']],
    ['floating point', ['-e', 'floating-point', '-b', '32']],
    ['stereo', ['-c', '2']],
    ['96 kHz', ['-r', '96000']],
  ])('of %s (written by sox) is read', async (name, format) => {
    const page = await reading(sounds.convert(clean(), name.replace(' ', '-'), ...format), 'QEV');
    await identWords(page).verdict.filter({ hasText: 'It sends QEV.' }).waitFor(PATIENCE);
  });

  test('that is cut short is heard as far as it goes, and that is said', async () => {
    const whole = readFileSync(clean());
    const file = path.join(sounds.dir, 'cut.wav');
    writeFileSync(file, whole.subarray(0, Math.round(whole.length * 0.8)));
    const page = await reading(file, 'QEV');
    await page.getByText('The recording is cut short').waitFor(PATIENCE);
    await identWords(page).verdict.filter({ hasText: 'It sends QEV.' }).waitFor(PATIENCE);
  });

  test('that is none is refused with what to do', async () => {
    const file = path.join(sounds.dir, 'none.wav');
    writeFileSync(file, 'Quebec Echo Victor, as text');
    const page = await reading(file, 'QEV');
    const { problem } = identWords(page);
    await problem.filter({ hasText: 'Save it as a WAV file and choose it again.' }).waitFor();
  });

  test('of 200 MB is refused before it is read', async () => {
    const file = path.join(sounds.dir, 'large.wav');
    writeFileSync(file, '');
    truncateSync(file, 200_000_000);
    const page = await reading(file, 'QEV');
    await identWords(page).problem.filter({ hasText: 'This file has 200 MB' }).waitFor();
  });

  test('can be cancelled while it is heard', async () => {
    const samples = new Float32Array(48_000 * 110);
    const page = await reading(sounds.wav('long', samples, 48_000), 'QEV');
    const words = identWords(page);
    await words.cancel.click();
    await words.listen.waitFor();
    expect(await words.verdict.count()).toBe(0);
  });
});

describe('a microphone that does not give sound', () => {
  test('refused: how to allow it, and that a recording works without it', async () => {
    const browser = await sounds.browser(clean());
    const page = await stage.open({ ...LISTEN, browser });
    const words = identWords(page);
    await words.listen.click();
    await words.problem.filter({ hasText: 'The microphone is not allowed here.' }).waitFor();
    expect(await words.problem.textContent()).toContain('A recording works without it.');
  });

  test('there is none: plug one in', async () => {
    const page = await stage.open(LISTEN);
    await page.context().grantPermissions(['microphone']);
    const words = identWords(page);
    await words.listen.click();
    await words.problem.filter({ hasText: 'There is no microphone.' }).waitFor();
  });

  test('nothing but zeros for five seconds: it is switched off', async () => {
    const file = sounds.wav('zeros', new Float32Array(48_000 * 15), 48_000);
    const page = await listening(file, 'QEV');
    await page.getByText('The microphone gives no sound at all').waitFor(PATIENCE);
  });

  test('unplugged in the middle: it says so and stops', async () => {
    const browser = await sounds.browser(clean(), ALLOWED);
    const page = await stage.open({ ...LISTEN, browser, scripts: [keepTracks] });
    const words = identWords(page);
    await words.listen.click();
    await words.stopListening.waitFor();
    await page.getByText(/^Listening:/).waitFor();
    await page.evaluate(() => {
      for (const track of globalThis.keptTracks) track.dispatchEvent(new Event('ended'));
    });
    await words.problem.filter({ hasText: 'The microphone is gone' }).waitFor();
    await words.listen.waitFor();
    expect(
      await page.evaluate(() => globalThis.keptTracks.every((each) => each.readyState === 'ended')),
    ).toBe(true);
  });

  test('sound put to sleep by the device: it says so and stops', async () => {
    const browser = await sounds.browser(clean(), ALLOWED);
    const page = await stage.open({ ...LISTEN, browser, scripts: [keepContexts] });
    const words = identWords(page);
    await words.listen.click();
    await page.getByText(/^Listening:/).waitFor();
    await page.evaluate(async () => {
      for (const context of globalThis.keptContexts) await context.suspend();
    });
    await words.problem.filter({ hasText: 'put the sound to sleep' }).waitFor();
  });

  test('a second window begins to listen: the first one stops and says why', async () => {
    const page = await listening(clean(), 'QEV');
    await page.getByText(/^Listening:/).waitFor();
    const other = await stage.open({ ...LISTEN, context: page.context() });
    await identWords(other).listen.click();
    await other.getByText(/^Listening:/).waitFor();
    await identWords(page).problem.filter({ hasText: 'Another window' }).waitFor();
    await identWords(page).listen.waitFor();
  });
});

declare global {
  // Only in pages that these scripts were put into.
  var keptTracks: MediaStreamTrack[];
  var keptContexts: AudioContext[];
}

function keepTracks(): void {
  globalThis.keptTracks = [];
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (devices === undefined) return;
  const open = devices.getUserMedia.bind(devices);
  devices.getUserMedia = async (wanted) => {
    const stream = await open(wanted);
    globalThis.keptTracks.push(...stream.getTracks());
    return stream;
  };
}

function keepContexts(): void {
  globalThis.keptContexts = [];
  const Real = AudioContext;
  globalThis.AudioContext = class extends Real {
    constructor(options?: AudioContextOptions) {
      super(options);
      globalThis.keptContexts.push(this);
    }
  };
}
