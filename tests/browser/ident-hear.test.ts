import { execFileSync } from 'node:child_process';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { heardSoFar, isSound, isTone, keyingOf, quiet, soundS, tapSound } from './sound-tap.ts';
import { ownDir, setStage } from './stage.ts';

const stage = setStage();
const dir = ownDir();

const WPM = 15;

async function openHear(): Promise<Page> {
  return stage.open({
    hasOwnClock: false,
    settings: { cautionsReadAtMs: 1, palette: 'day', voiceOn: false, identWpm: WPM },
    scripts: [tapSound],
    at: '#/idents/hear',
  });
}

describe('an ident that is played', () => {
  test('once by the VOR: 1020 Hz, its Morse, and the marks move with it', async () => {
    const page = await openHear();
    await page.getByLabel('Ident', { exact: true }).fill('kfw');
    await page.getByText('Kilo Foxtrot Whiskey').waitFor();
    await page.getByText('Once', { exact: true }).click();
    await page.getByRole('button', { name: 'Play it' }).click();
    await page.locator('.ident-shown .mark.sounding').first().waitFor();
    await page.getByText('the VOR, on the lower tone').waitFor();
    await page.getByRole('button', { name: 'Play it' }).waitFor({ timeout: 30_000 });
    const heard = await heardSoFar(page);
    // ITU-R M.1677-1: K -.-  F ..-.  W .--
    expect(keyingOf(heard, WPM)).toBe('-.- ..-. .--');
    const loud = heard.filter(isSound);
    expect(loud.filter(isTone).length).toBeGreaterThan(0.8 * loud.length);
    expect(await page.locator('.mark.sounding').count()).toBe(0);
  });

  test('is stopped by the button, and by leaving the page', async () => {
    const page = await openHear();
    const play = page.getByRole('button', { name: 'Play it' });
    await play.click();
    await expect.poll(() => soundS(page), { timeout: 15_000 }).toBeGreaterThan(0.1);
    await page.getByRole('button', { name: 'Stop' }).click();
    await quiet(page, 1500);
    await play.click();
    await page.locator('.mark.sounding').first().waitFor();
    await page.getByRole('link', { name: 'All flights' }).click();
    await quiet(page, 1500);
  });

  test('with all that may lie over it is saved as a WAV file that sox reads', async () => {
    const page = await openHear();
    await page.getByText('Make it harder').click();
    for (const choice of ['Cabin', 'It swells and fades', 'Keyed unevenly, as by hand'])
      await page.getByText(choice, { exact: true }).click();
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as WAV' }).click();
    const saved = await saving;
    expect(saved.suggestedFilename()).toBe('QEV.wav');
    const file = path.join(dir, 'saved.wav');
    await saved.saveAs(file);
    const of = (what: string): number =>
      Number(execFileSync('soxi', [what, file], { encoding: 'utf8' }));
    expect(of('-r')).toBe(16_000);
    expect(of('-c')).toBe(1);
    // Three times by the VOR, once by the DME, 10 s apart: ICAO Annex 10 volume I, 3.5.3.6.4 (from memory).
    expect(of('-D')).toBeGreaterThan(30);
    expect(of('-D')).toBeLessThan(40);
  });

  test('under a voice: the bundled voice is laid over it', async () => {
    const page = await openHear();
    await page.getByText('Once', { exact: true }).click();
    await page.getByText('Make it harder').click();
    await page.getByText('A voice on the channel').click();
    await page.getByRole('button', { name: 'Play it' }).click();
    await page.locator('.mark.sounding').first().waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Play it' }).waitFor({ timeout: 30_000 });
    const loud = (await heardSoFar(page)).filter(isSound);
    expect(loud.filter((each) => !isTone(each)).length).toBeGreaterThan(0.3 * loud.length);
  });

  test('that nobody can key is not played, and what is wanted stands beside it', async () => {
    const page = await openHear();
    await page.getByLabel('Ident', { exact: true }).fill('QE-V1');
    await page.getByText('1 to 4 letters').waitFor();
    expect(await page.getByRole('button', { name: 'Play it' }).isDisabled()).toBe(true);
    expect(await page.getByRole('button', { name: 'Save as WAV' }).isDisabled()).toBe(true);
  });
});
