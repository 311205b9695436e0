import { expect, test } from 'vitest';
import { identWords } from './ident-words.ts';
import { lookOver } from './look-over.ts';
import { ALLOWED, setSounds } from './microphone.ts';
import { flyWords, inSheet, pageWords, sheet } from './page-words.ts';
import { startDemo } from './pilot.ts';
import { setStage } from './stage.ts';

const stage = setStage();
const sounds = setSounds();

const SETTINGS = { cautionsReadAtMs: 1, voiceOn: false, palette: 'auto' };
const CLEAR = { seed: 41, condition: 'awgn20', ident: 'QEV', repeats: 2, wpm: 7 } as const;

test('all sections of the page of idents can be read and used, by day and by night', async () => {
  const page = await stage.open({ hasOwnClock: false, settings: SETTINGS });
  const words = identWords(page);
  const problems: string[] = [];
  await page.getByRole('link', { name: 'Idents' }).click();
  await page.getByText('Make it harder').click();
  await page.getByText('Cabin', { exact: true }).click();
  problems.push(...(await lookOver(page, 'ident-hear')));
  await words.section('Tool listens').click();
  await words.listen.waitFor();
  problems.push(...(await lookOver(page, 'ident-listen')));
  await words.expected.fill('QEV');
  await words.file.setInputFiles(sounds.clip('clear', CLEAR));
  await words.verdict.filter({ hasText: 'It sends QEV.' }).waitFor({ timeout: 60_000 });
  problems.push(...(await lookOver(page, 'ident-heard')));
  for (const name of ['Practise', 'Look up']) {
    await words.section(name).click();
    await page.getByRole('heading', { level: 2, name }).waitFor();
    problems.push(...(await lookOver(page, `ident-${name.toLowerCase().replace(' ', '-')}`)));
  }
  await pageWords(page).allFlights.click();
  expect(problems).toEqual([]);
});

test('identifying in flight with the tool listening fits under a finger', async () => {
  const browser = await sounds.browser(sounds.clip('clear', CLEAR), ALLOWED);
  const page = await stage.open({ hasOwnClock: false, settings: SETTINGS, browser });
  await startDemo(page);
  await flyWords(page).identState.click();
  await sheet(page, /Identify QEV/).waitFor();
  await inSheet(page, 'Let the tool listen').click();
  await inSheet(page, 'Listen').click();
  await identWords(page).verdict.filter({ hasText: 'It sends QEV.' }).waitFor({ timeout: 60_000 });
  expect(await lookOver(page, 'ident-in-flight', { isInFlight: true })).toEqual([]);
});

test('where movement is not wanted the picture stands still between two looks', async () => {
  const browser = await sounds.browser(sounds.clip('clear', CLEAR), ALLOWED);
  const page = await stage.open({ hasOwnClock: false, browser, at: '#/idents/listen' });
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const words = identWords(page);
  await words.listen.click();
  await words.picture.waitFor();
  const changes = await words.picture.evaluate(async (canvas: HTMLCanvasElement) => {
    let count = 0;
    let before = canvas.toDataURL();
    const endMs = performance.now() + 4000;
    while (performance.now() < endMs) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      const now = canvas.toDataURL();
      if (now !== before) count += 1;
      before = now;
    }
    return count;
  });
  // Once a second.
  expect(changes).toBeGreaterThan(1);
  expect(changes).toBeLessThan(7);
});
