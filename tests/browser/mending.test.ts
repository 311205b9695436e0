import { describe, expect, test } from 'vitest';
import { flyWords, inSheet, readingWords, sheet } from './page-words.ts';
import {
  giveByTyping,
  readingCounts,
  startDemo,
  tapFigure,
  tapNeedle,
  typeSentence,
} from './pilot.ts';
import { setStage } from './stage.ts';
import type { Page } from 'playwright-core';

const stage = setStage();

const PANELS = [
  { headingDeg: 115, courseSetDeg: 112, needleDots: 1.5, flag: 'TO', dmeNm: 11.2 },
  { headingDeg: 140, courseSetDeg: 112, needleDots: 1, flag: 'TO', dmeNm: 10.5 },
  { headingDeg: 135, courseSetDeg: 112, needleDots: 0.5, flag: 'TO', dmeNm: 9.8 },
] as const;

/** In flight, with three readings half a minute apart; gives what the page answered to each. */
async function midFlight(page: Page): Promise<readonly string[]> {
  const words = flyWords(page);
  await startDemo(page);
  const answers: string[] = [];
  for (const panel of PANELS) {
    await giveByTyping(page, panel);
    answers.push((await words.said.textContent()) ?? '');
    await page.clock.fastForward(30_000);
  }
  return answers;
}

async function listed(page: Page): Promise<readonly string[]> {
  await flyWords(page).readings.click();
  const items = sheet(page, 'Readings').getByRole('listitem');
  await items.first().waitFor();
  return items.allTextContents();
}

describe('readings that were wrong', () => {
  test('all of them are listed with the answer that each gave', async () => {
    const page = await stage.open();
    const answers = await midFlight(page);
    const list = (await listed(page)).toReversed();
    expect(list).toHaveLength(3);
    for (const [index, answer] of answers.entries()) expect(list[index]).toContain(answer);
    expect(list[0]).toContain('heading 115 · needle 1½ dots right · TO · DME 11.2 · OBS 112');
    expect(list[0]).toContain('typed: ');
  });

  test('Undo takes the last one back, and the answer before stands again', async () => {
    const page = await stage.open();
    const [, second] = await midFlight(page);
    const words = flyWords(page);
    await words.undo.click();
    await readingCounts(page, 2);
    await words.said.filter({ hasText: second ?? '?' }).waitFor();
    const [newest] = await listed(page);
    expect(newest).toContain('taken back');
  });

  test('the typed word "correction" takes the last one back too', async () => {
    const page = await stage.open();
    await midFlight(page);
    await typeSentence(page, 'correction');
    await readingCounts(page, 2);
  });

  test('any of them can be corrected: the answers are worked out anew', async () => {
    const page = await stage.open();
    const [, second] = await midFlight(page);
    const words = flyWords(page);
    await words.readings.click();
    await inSheet(page, 'Correct').nth(1).click();
    await words.readingHead.filter({ hasText: 'Correcting the reading of 12:00:3' }).waitFor();
    await tapNeedle(page, -2);
    await tapFigure(page, 'DME', '10.6');
    await readingWords(page).correctIt.click();
    await words.readingHead.filter({ hasText: 'Next reading' }).waitFor();
    const [, middle] = await listed(page);
    expect(middle).toContain('needle 2 dots left · TO · DME 10.6');
    expect(middle).toContain('corrected');
    expect(middle).not.toContain(second);
  });

  test('any of them can be taken back from the list; it stays there, struck out, and counts no more', async () => {
    const page = await stage.open();
    const [first] = await midFlight(page);
    await flyWords(page).readings.click();
    await inSheet(page, 'Take back').nth(1).click();
    const item = sheet(page, 'Readings').getByRole('listitem').nth(1);
    await item.filter({ hasText: 'taken back' }).waitFor();
    expect(await sheet(page, 'Readings').getByRole('listitem').nth(2).textContent()).toContain(
      first,
    );
    await inSheet(page, 'Close').click();
    await readingCounts(page, 2);
  });
});
