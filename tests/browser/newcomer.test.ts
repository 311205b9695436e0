import { describe, expect, test } from 'vitest';
import { FIRST_PANEL } from './demo.ts';
import { flyWords, inSheet, openSheet, pageWords, readingWords, sheet } from './page-words.ts';
import { giveByTyping, spokenSoFar, startDemo, walkChecklist } from './pilot.ts';
import { setStage } from './stage.ts';

const stage = setStage();

/** What is read aloud for the first leg of the demo, in this order. */
const ITEMS = [
  'Tune one one three decimal three five.',
  'Identify Quebec Echo Victor. Listen to the Morse.',
  'Check the flags: needle alive, D M E showing a distance.',
  'Set course one one two on the O B S. Check the flag shows TO.',
  'Turn onto heading one one one. No wind known yet.',
  'Look out.',
];

describe('a newcomer', () => {
  test('sees the cautions once: never again after they were read', async () => {
    const page = await stage.open({ settings: null });
    const { cautions, cautionsRead, flyDemo } = pageWords(page);
    await expect.poll(() => cautions.isVisible()).toBe(true);
    expect(await cautions.textContent()).toContain('never the primary means of navigation');
    // Escape is no answer.
    await page.keyboard.press('Escape');
    await expect.poll(() => cautions.isVisible()).toBe(true);
    await cautionsRead.click();
    await cautions.waitFor({ state: 'detached' });
    await page.reload();
    await flyDemo.waitFor();
    expect(await cautions.count()).toBe(0);
  });

  test('has each item of the checklist read aloud while tapping through it', async () => {
    const page = await stage.open();
    await startDemo(page);
    await walkChecklist(page);
    const said = (await spokenSoFar(page)).join('\n');
    const places = ITEMS.map((item) => said.indexOf(item));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((one, other) => one - other));
  });

  test('hears an item again, and skips one with a reason that stays on the page', async () => {
    const page = await stage.open();
    const words = flyWords(page);
    await startDemo(page);
    await words.again.click();
    const said = await spokenSoFar(page);
    expect(said.filter((line) => line.includes('Tune one one three'))).toHaveLength(2);
    await words.skip.click();
    await inSheet(page, 'Done before').click();
    await words.listen.waitFor();
    expect(await words.checklist.textContent()).toContain('(skipped: Done before)');
  });

  test('has to say why an item is skipped', async () => {
    const page = await stage.open();
    const words = flyWords(page);
    await startDemo(page);
    await words.skip.click();
    await inSheet(page, 'Skip').click();
    expect(await openSheet(page).getByRole('alert').textContent()).toContain('Say why');
    await openSheet(page).getByRole('textbox').fill('set by the instructor');
    await inSheet(page, 'Skip').click();
    await words.listen.waitFor();
    expect(await words.checklist.textContent()).toContain('(skipped: set by the instructor)');
  });

  test('goes back to an item; the ident has then to be confirmed anew', async () => {
    const page = await stage.open();
    const words = flyWords(page);
    await startDemo(page);
    await words.next.click();
    await words.back.click();
    await words.checkItem.filter({ hasText: 'Tune 113.35' }).waitFor();
    await words.next.click();
    await words.listen.click();
    await inSheet(page, 'Ident confirmed').click();
    await words.identState.filter({ hasText: 'ident confirmed' }).waitFor();
    await words.back.click();
    await words.identState.filter({ hasText: 'not confirmed' }).waitFor();
    await words.listen.waitFor();
  });

  test('walks the whole checklist by keyboard alone and gives the first reading', async () => {
    const page = await stage.open();
    const words = flyWords(page);
    const press = (key: string): Promise<void> => page.keyboard.press(key);
    const tabTo = async (name: string): Promise<void> => {
      for (let tab = 0; tab < 40; tab += 1) {
        await press('Tab');
        const focus = page.locator(':focus');
        if ((await focus.count()) > 0 && (await focus.textContent())?.includes(name) === true)
          return;
      }
      throw new Error(`"${name}" cannot be reached by Tab.`);
    };
    await pageWords(page).flyDemo.waitFor();
    await tabTo('Fly the demo');
    await press('Enter');
    await words.next.waitFor();
    await press('n');
    await words.listen.waitFor();
    await press('n');
    await sheet(page, /^Identify QEV/).waitFor();
    await tabTo('Ident confirmed');
    await press('Enter');
    await openSheet(page).waitFor({ state: 'detached' });
    while (!(await words.startTheLeg.isVisible())) {
      const item = await words.checkItem.textContent();
      await press('n');
      await words.checkItem.filter({ hasNotText: item ?? '' }).waitFor();
    }
    await press('n');
    await words.startTheLeg.waitFor({ state: 'detached' });
    await press('ArrowRight');
    await press('ArrowRight');
    await press('ArrowLeft');
    await readingWords(page).needle.and(page.locator('[aria-valuenow="0.5"]')).waitFor();
    await press('g');
    await words.heading.waitFor();
    await press('t');
    await page.keyboard.type('heading 115, distance 11.2');
    await press('Enter');
    await words.readings.filter({ hasText: 'Readings 2' }).waitFor();
  });

  test('is told with every answer that the ident is not confirmed, until it is', async () => {
    const page = await stage.open();
    const words = flyWords(page);
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    expect(await words.said.textContent()).toContain('Ident not confirmed.');
    await page.clock.fastForward(30_000);
    await giveByTyping(page, { ...FIRST_PANEL, dmeNm: 10.5 });
    expect(await words.said.textContent()).toContain('Ident not confirmed.');
    await words.identState.click();
    await inSheet(page, 'Not right').click();
    await openSheet(page).getByRole('alert').getByText('Do not use this station').waitFor();
    await inSheet(page, 'Ident confirmed').click();
    await words.identState.filter({ hasText: 'ident confirmed' }).waitFor();
    await words.said.filter({ hasNotText: 'Ident not confirmed' }).waitFor();
    await page.clock.fastForward(30_000);
    await giveByTyping(page, { ...FIRST_PANEL, dmeNm: 9.8 });
    expect(await words.said.textContent()).not.toContain('Ident not confirmed');
  });
});
