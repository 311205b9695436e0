import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { FIRST_PANEL } from './demo.ts';
import { flyWords, inSheet, readingWords, sheet } from './page-words.ts';
import {
  countReadings,
  giveByTapping,
  readingCounts,
  spokenSoFar,
  startDemo,
  tapNeedle,
  typeSentence,
} from './pilot.ts';
import { setStage } from './stage.ts';

const stage = setStage();

async function newest(page: Page): Promise<string> {
  await flyWords(page).readings.click();
  const text = await sheet(page, 'Readings').getByRole('listitem').first().textContent();
  await inSheet(page, 'Close').click();
  return text ?? '';
}

/** In flight with one reading, twenty seconds later: before the page asks for the next one. */
async function inFlight(): Promise<Page> {
  const page = await stage.open();
  await startDemo(page);
  await giveByTapping(page, FIRST_PANEL);
  await page.clock.fastForward(20_000);
  return page;
}

describe('giving a reading', () => {
  test('of a second station is typed by its ident, and its radial is a cross-bearing', async () => {
    const page = await inFlight();
    await typeSentence(page, 'ZZZ radial 240');
    await page.getByText('no station ZZZ is known here within 200 NM', { exact: false }).waitFor();
    await typeSentence(page, 'QEV radial 290');
    await readingCounts(page, 2);
    expect(await newest(page)).toContain('OBS 290');
  });

  test('one tap is enough when all is as expected: what is shown is what is recorded', async () => {
    const page = await inFlight();
    const words = readingWords(page);
    await words.dme.filter({ hasText: /^10\.[4-9]$/ }).waitFor();
    await words.asExpected.click();
    await readingCounts(page, 2);
    const reading = await newest(page);
    expect(reading).toMatch(/heading \d{3} · needle .* · TO · DME 10\.[4-9] · OBS 112/);
  });

  test('Clear lets touched values follow what is expected again', async () => {
    const page = await inFlight();
    const words = readingWords(page);
    const before = await words.needle.getAttribute('aria-valuenow');
    await tapNeedle(page, -4.5);
    expect(await words.needle.getAttribute('aria-valuenow')).toBe('-4.5');
    await words.clear.click();
    await words.asExpected.waitFor();
    expect(await words.needle.getAttribute('aria-valuenow')).toBe(before);
  });

  test('a finger that slides moves the needle in half dots to full scale and no further', async () => {
    const page = await inFlight();
    const { needle } = readingWords(page);
    const box = await needle.boundingBox();
    if (box === null) throw new Error('no strip');
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width / 2, y);
    await page.mouse.down();
    const seen = new Set<string>();
    for (let x = box.width / 2; x < box.width + 60; x += 8) {
      await page.mouse.move(box.x + x, y);
      seen.add((await needle.getAttribute('aria-valuenow')) ?? '');
    }
    await page.mouse.up();
    expect([...seen].map(Number)).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5]);
    expect(await needle.getAttribute('aria-valuetext')).toBe('full scale right');
  });

  test('a finger that stays on plus goes on counting', async () => {
    const page = await inFlight();
    const words = readingWords(page);
    const before = Number(await words.dme.getAttribute('aria-valuenow'));
    await words.step('DME', 'more').hover();
    await page.mouse.down();
    await page.waitForTimeout(1200);
    await page.mouse.up();
    const after = Number(await words.dme.getAttribute('aria-valuenow'));
    expect(after - before).toBeGreaterThan(0.35);
    await page.waitForTimeout(400);
    expect(Number(await words.dme.getAttribute('aria-valuenow'))).toBe(after);
  });

  test('with the flag OFF the needle tells nothing and is not recorded', async () => {
    const page = await inFlight();
    const words = readingWords(page);
    await tapNeedle(page, 2);
    await words.flag('OFF').click();
    expect(await words.needle.getAttribute('aria-disabled')).toBe('true');
    await words.give.click();
    await readingCounts(page, 2);
    expect(await newest(page)).toMatch(/heading \d{3} · OFF · DME/);
  });

  test('a double tap gives one reading', async () => {
    const page = await inFlight();
    await tapNeedle(page, 1);
    await readingWords(page).give.dblclick();
    await readingCounts(page, 2);
    await page.waitForTimeout(600);
    expect(await countReadings(page)).toBe(2);
  });
});

describe('asking', () => {
  test('Say again repeats what was said last, and Why gives the reason', async () => {
    const page = await inFlight();
    const words = flyWords(page);
    await words.sayAgain.click();
    await words.why.click();
    await words.said.filter({ hasText: /^Why: .*needle|dots/ }).waitFor();
    const shown = ((await words.said.textContent()) ?? '').replace('Why: ', '');
    const said = await spokenSoFar(page);
    const [asked, again, why] = said.slice(-3);
    expect(again?.slice(8)).toBe(asked?.slice(8));
    expect(why).toContain(shown);
  });

  test('"how far to go" is answered with the distance by now, "which way to turn" with the heading', async () => {
    const page = await inFlight();
    await typeSentence(page, 'how far to go');
    await typeSentence(page, 'which way to turn');
    const lastTwo = async (): Promise<string> => (await spokenSoFar(page)).slice(-2).join('\n');
    await expect.poll(lastTwo).toMatch(/One zero decimal \w+ miles to go.*\n.*heading \w+ \w+ \w+/);
  });
});
