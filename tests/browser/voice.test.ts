import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { FIRST_PANEL } from './demo.ts';
import { flyWords, inSheet, openSheet, pageWords, sheet } from './page-words.ts';
import { giveByTyping, spokenSoFar, startDemo, typeSentence } from './pilot.ts';
import { heardSoFar, isSound, isTone, keyingOf, quiet, soundS, tapSound } from './sound-tap.ts';
import { setStage } from './stage.ts';

const stage = setStage();

const WPM = 15;

declare global {
  var progressSeen: number[];
}

function tapSoundAndProgress(): void {
  globalThis.progressSeen = [];
  new MutationObserver(() => {
    const found = /fetching the voice, (\d+) %/.exec(
      document.querySelector('footer')?.textContent ?? '',
    );
    if (found !== null) globalThis.progressSeen.push(Number(found[1]));
  }).observe(document, { subtree: true, childList: true, characterData: true });
}

/** A page that may sound, with all that it sends to the loudspeaker kept. The clock is this machine’s. */
async function openSounding(settings: object, at = ''): Promise<Page> {
  const page = await stage.open({
    hasOwnClock: false,
    settings: { cautionsReadAtMs: 1, palette: 'day', identWpm: WPM, ...settings },
    scripts: [tapSound, tapSoundAndProgress],
    at,
  });
  return page;
}

/** Waits until a line of the log has come out like this. */
async function outcome(page: Page, line: RegExp): Promise<void> {
  await expect
    .poll(async () => (await spokenSoFar(page)).some((each) => line.test(each)), {
      timeout: 40_000,
    })
    .toBe(true);
}

describe('in a browser without a voice of its own', () => {
  test('the bundled voice is fetched with its progress shown, and really sounds', async () => {
    const page = await openSounding({ voiceOn: true });
    expect(await page.evaluate(() => speechSynthesis.getVoices().length)).toBe(0);
    await startDemo(page);
    await outcome(page, /Tune one one three decimal three five\.\s*$/);
    const progress = await page.evaluate(() => globalThis.progressSeen);
    expect(progress.length).toBeGreaterThan(1);
    expect(progress.toSorted((one, other) => one - other)).toEqual(progress);
    expect(progress.at(-1)).toBeGreaterThan(50);
    // Eight words at a pilot’s pace; hum, click or silence would be far off.
    expect(await soundS(page)).toBeGreaterThan(1.5);
    const loud = (await heardSoFar(page)).filter(isSound);
    expect(loud.filter(isTone).length).toBeLessThan(loud.length / 4);
  });

  test('a newer answer takes the place of the older one, which is not finished', async () => {
    const page = await openSounding({ voiceOn: true });
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    await giveByTyping(page, { ...FIRST_PANEL, dmeNm: 11.1, needleDots: 1 });
    await outcome(page, /Turn .*One one decimal one miles.*Ident not confirmed\.\s*$/);
    const said = await spokenSoFar(page);
    expect(said.find((line) => line.includes('One one decimal two miles'))).toContain(
      'a newer answer took its place',
    );
  });

  test('switched off it says nothing, and what it would have said is in the log', async () => {
    const page = await openSounding({ voiceOn: true });
    await startDemo(page);
    await flyWords(page).voice.click();
    await flyWords(page).voice.filter({ hasText: 'Voice is off' }).waitFor();
    await page.waitForTimeout(500);
    const before = await soundS(page);
    await giveByTyping(page, FIRST_PANEL);
    await typeSentence(page, 'say again');
    await page.waitForTimeout(2500);
    expect(await soundS(page)).toBe(before);
    const said = await spokenSoFar(page);
    expect(said.filter((line) => /Turn .*not said: voice off/.test(line)).length).toBeGreaterThan(
      0,
    );
  });
});

describe('an ident', () => {
  test('sounds at 1020 Hz in the Morse of its letters, twice, and can then be confirmed', async () => {
    const page = await openSounding({ voiceOn: false });
    const words = flyWords(page);
    await startDemo(page);
    await words.next.click();
    await words.listen.click();
    await sheet(page, /Identify QEV/)
      .getByText('Quebec Echo Victor')
      .waitFor();
    await inSheet(page, 'Play the ident').click();
    await inSheet(page, 'Stop').waitFor();
    await inSheet(page, 'Play the ident').waitFor({ timeout: 30_000 });
    const heard = await heardSoFar(page);
    // ITU-R M.1677-1: Q --.-  E .  V ...-
    expect(keyingOf(heard, WPM)).toBe('--.- . ...- / --.- . ...-');
    // At the ends of each mark a window is only partly filled.
    const loud = heard.filter(isSound);
    expect(loud.filter(isTone).length).toBeGreaterThan(0.8 * loud.length);
    await inSheet(page, 'Ident confirmed').click();
    await openSheet(page).waitFor({ state: 'detached' });
    await words.identState.filter({ hasText: 'ident confirmed' }).waitFor();
  });

  test('is never talked over: what is to be said waits until it has sounded', async () => {
    const page = await openSounding({ voiceOn: true }, '#/settings');
    await pageWords(page).title.filter({ hasText: 'Settings' }).waitFor();
    const speak = page.getByRole('button', { name: 'Try the voice' });
    await speak.click();
    await expect.poll(() => soundS(page), { timeout: 40_000 }).toBeGreaterThan(1);
    const identAtMs = await page.evaluate(() => performance.now());
    await page.getByRole('button', { name: 'Hear it' }).click();
    await expect
      .poll(async () =>
        (await heardSoFar(page)).some((each) => each.atMs > identAtMs && isTone(each)),
      )
      .toBe(true);
    await speak.click();
    await quiet(page, 3000);
    const since = (await heardSoFar(page)).filter(({ atMs }) => atMs > identAtMs);
    const tones = since.filter(isTone);
    const firstTone = since.findIndex(
      (each, index) => isTone(each) && since.slice(index, index + 5).every(isTone),
    );
    const lastTone = since.findLastIndex(
      (each, index) => isTone(each) && since.slice(index - 5, index).every(isTone),
    );
    expect(tones.length).toBeGreaterThan(50);
    const between = since.slice(firstTone, lastTone + 1).filter(isSound);
    expect(between.filter(isTone).length).toBeGreaterThan(0.8 * between.length);
    const after = since.slice(lastTone + 10).filter(isSound);
    expect(after.length).toBeGreaterThan(100);
  });
});
