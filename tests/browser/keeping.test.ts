import { describe, expect, test } from 'vitest';
import { FIRST_PANEL } from './demo.ts';
import { flyWords, inSheet, openSheet, pageWords, sheet } from './page-words.ts';
import { giveByTyping, readingCounts, startDemo } from './pilot.ts';
import { setStage } from './stage.ts';

const stage = setStage();

describe('flights', () => {
  test('one from the list goes on where it was; one that is deleted stays deleted', async () => {
    const page = await stage.open();
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    await page.goto(`${stage.address}/#/`);
    await page.getByRole('link', { name: /^Demo flight/ }).click();
    await readingCounts(page, 1);
    await flyWords(page).savedState.filter({ hasText: 'on the server' }).waitFor();

    await page.goto(`${stage.address}/#/`);
    await page.getByRole('button', { name: /^Delete Demo flight/ }).click();
    await inSheet(page, 'Keep it').click();
    await openSheet(page).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Delete Demo flight/ }).click();
    await sheet(page, 'Delete this flight?').waitFor();
    await inSheet(page, 'Delete it').click();
    await page.getByText('None yet').waitFor();
    await page.reload();
    await page.getByText('None yet').waitFor();
  });

  test('one that was finished by a slip goes on after Undo', async () => {
    const page = await stage.open();
    const words = flyWords(page);
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    await words.flight.click();
    await inSheet(page, 'Finish the flight').click();
    await page.getByRole('heading', { name: /Flight finished at 12:00/ }).waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await words.heading.waitFor();
    await giveByTyping(page, { ...FIRST_PANEL, dmeNm: 11.1 });
  });
});

describe('settings are kept on the device', () => {
  test('the palette, the way of saying figures, and aircraft with their names', async () => {
    const page = await stage.open({ at: '#/settings' });
    await page.getByRole('radio', { name: 'Night' }).check();
    await page.getByRole('radio', { name: 'one one point one' }).check();
    await page.getByRole('button', { name: 'Add an aircraft' }).click();
    await page.getByLabel('Name').fill('Club two-seater');
    await page.getByLabel('True airspeed').fill('82');
    await page.getByLabel('Dots to full scale').fill('4');
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByRole('radio', { name: /^Club two-seater/ }).waitFor();

    await page.reload();
    await page.locator('html[data-light=night]').waitFor();
    expect(await page.getByRole('radio', { name: 'Night' }).isChecked()).toBe(true);
    expect(await page.getByRole('radio', { name: /^Club two-seater/ }).isChecked()).toBe(true);
    await pageWords(page).allFlights.click();
    await pageWords(page).typeInALeg.click();
    await page.getByText('82 kt true, one dot is 2°, full scale 4 dots').waitFor();
    await page.goto(`${stage.address}/#/`);
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    expect(await flyWords(page).said.textContent()).toContain('One one point two miles');
  });
});
