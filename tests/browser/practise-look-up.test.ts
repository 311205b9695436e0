import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { identTimeline } from '../../src/ident/timeline.ts';
import { lookOver } from './look-over.ts';
import { nowMs } from './pilot.ts';
import { setStage } from './stage.ts';

const stage = setStage();

const LOOK_UP = '#/idents/look-up';

const couldBe = (page: Page) => page.getByRole('list', { name: 'Could be' }).getByRole('listitem');
const keyed = (page: Page) => page.getByRole('list', { name: 'Keyed so far' });

/** Taps an ident by the page’s own clock, each press held as long as it is keyed. */
async function tapRhythm(
  page: Page,
  ident: string,
  down: () => Promise<void>,
  up: () => Promise<void>,
): Promise<void> {
  // A clock that also ran by itself would make a dot as long as this machine is slow.
  await page.clock.pauseAt((await nowMs(page)) + 5000);
  let nowS = 0;
  for (const { startS, durationS } of identTimeline(ident, { wpm: 8 })) {
    await page.clock.runFor(Math.round((startS - nowS) * 1000));
    await down();
    await page.clock.runFor(Math.round(durationS * 1000));
    await up();
    nowS = startS + durationS;
  }
  await page.clock.resume();
}

describe('an ident that was heard', () => {
  test('typed in dots and dashes gives its letters as they are keyed, and the station', async () => {
    const page = await stage.open({ at: LOOK_UP });
    const field = page.getByLabel('Dots and dashes');
    await field.fill('--.');
    expect(await keyed(page).textContent()).toBe('G Q Z');
    await couldBe(page)
      .filter({ hasText: 'QEV' })
      .filter({ hasText: 'begins like this' })
      .waitFor();
    await field.fill('--.- . ...-');
    await couldBe(page).filter({ hasText: 'QEV' }).filter({ hasText: 'sends this' }).waitFor();
    expect(await keyed(page).getByRole('listitem').count()).toBe(3);
    await field.fill('--.- . ..-');
    await page.getByText('No station known here sends that.').waitFor();
  });

  test('keyed on the page says with an element not made out what it may be', async () => {
    const page = await stage.open({ at: LOOK_UP });
    for (const name of ['Dash', 'Not made out', 'Dot', 'Dash']) {
      await page.getByRole('button', { name, exact: true }).click();
    }
    expect(await keyed(page).textContent()).toBe('Q X');
    await page.getByRole('button', { name: 'Rub out the last one' }).click();
    expect(await keyed(page).textContent()).toContain('G');
    await page.getByRole('button', { name: 'Clear' }).click();
    await page.getByText('Nothing keyed yet.').waitFor();
  });

  test('tapped and held with the space bar is found', async () => {
    const page = await stage.open({ at: LOOK_UP });
    await page.getByRole('button', { name: /^Tap and hold/ }).focus();
    await tapRhythm(
      page,
      'QEV',
      () => page.keyboard.down('Space'),
      () => page.keyboard.up('Space'),
    );
    await couldBe(page).filter({ hasText: 'QEV' }).filter({ hasText: 'sends this' }).waitFor();
    expect(await keyed(page).textContent()).toBe('QEV');
  });

  test('tapped and held with a pointer is found; a new start after a pause begins anew', async () => {
    const page = await stage.open({ at: LOOK_UP });
    const pad = page.getByRole('button', { name: /^Tap and hold/ });
    await pad.hover();
    const down = (): Promise<void> => page.mouse.down();
    const up = (): Promise<void> => page.mouse.up();
    await tapRhythm(page, 'AN', down, up);
    expect(await keyed(page).textContent()).toMatch(/^AN/);
    await page.clock.runFor(8000);
    await tapRhythm(page, 'QEV', down, up);
    expect(await keyed(page).textContent()).toBe('QEV');
    await couldBe(page).filter({ hasText: 'QEV' }).waitFor();
  });

  test('is looked up on a page fit to be read and used, at both sizes and in both palettes', async () => {
    const settings = { cautionsReadAtMs: 1, voiceOn: false, palette: 'auto' };
    const page = await stage.open({ at: LOOK_UP, settings });
    await page.getByText('Nothing keyed yet.').waitFor();
    await page.getByLabel('Nearest to').waitFor();
    expect(await lookOver(page, 'look-up-empty')).toEqual([]);
    await page.getByLabel('Dots and dashes').fill('--.- ? ...');
    await couldBe(page).first().waitFor();
    expect(await lookOver(page, 'look-up-found')).toEqual([]);
  });
});
