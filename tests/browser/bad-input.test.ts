import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { FIRST_PANEL } from './demo.ts';
import { flyWords, inSheet, legForm, openSheet, pageWords, readingWords } from './page-words.ts';
import { countReadings, giveByTyping, startDemo, typeSentence } from './pilot.ts';
import { PHONE, setStage } from './stage.ts';

const stage = setStage();

async function isInSight(of: Locator, page: Page): Promise<boolean> {
  const box = await of.boundingBox();
  const height = page.viewportSize()?.height ?? 0;
  return box !== null && box.y >= 0 && box.y + box.height <= height;
}

describe('a sentence that cannot be taken', () => {
  test.each([
    ['needle banana', 'how many dots, and left or right?'],
    ['needle nine left', 'past full scale, which is 5'],
    ['distance 900', '200'],
    ['heading 480', 'not on the compass'],
    ['good evening', '"good" is not understood'],
    ['heading 100, heading 110', 'heading'],
    ['12', 'could be anything'],
  ])(
    '"%s": the reason stands beside it, it stays to be mended, nothing is recorded',
    async (sentence, reason) => {
      const page = await stage.open();
      const words = flyWords(page);
      await startDemo(page);
      await typeSentence(page, sentence);
      await words.problem.waitFor();
      expect(await words.problem.textContent()).toContain(reason);
      const { sentence: line } = readingWords(page);
      expect(await line.inputValue()).toBe(sentence);
      expect(await line.getAttribute('aria-invalid')).toBe('true');
      expect(await countReadings(page)).toBe(0);
      await line.fill('heading 112');
      await words.problem.waitFor({ state: 'detached' });
    },
  );

  test('on a phone the reason is in sight, and so is Why', async () => {
    const page = await stage.open({ size: PHONE, hasTouch: true });
    const words = flyWords(page);
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    await words.why.tap();
    await words.said.filter({ hasText: /^Why:/ }).waitFor();
    expect(await isInSight(words.said, page)).toBe(true);
    await typeSentence(page, 'needle banana');
    await words.problem.waitFor();
    expect(await isInSight(words.problem, page)).toBe(true);
  });

  test('a question before the first reading is answered with what is needed', async () => {
    const page = await stage.open();
    await startDemo(page);
    await typeSentence(page, 'how far to go');
    await flyWords(page).problem.filter({ hasText: 'give a reading first' }).waitFor();
    await typeSentence(page, 'correction');
    await flyWords(page).problem.filter({ hasText: 'no reading to take back' }).waitFor();
  });
});

describe('a reading on the panel that cannot be taken', () => {
  test('nothing read yet: it asks for the needle instead of recording', async () => {
    const page = await stage.open();
    await startDemo(page);
    await readingWords(page).give.click();
    await flyWords(page).problem.filter({ hasText: 'slide the needle' }).waitFor();
    expect(await countReadings(page)).toBe(0);
    expect(await readingWords(page).asExpected.isDisabled()).toBe(true);
  });

  test('a figure past its range does not leave the keypad', async () => {
    const page = await stage.open();
    await startDemo(page);
    await readingWords(page).dme.click();
    await openSheet(page).waitFor();
    await page.keyboard.type('555');
    await inSheet(page, 'Set').click();
    await openSheet(page).getByRole('alert').getByText('0 to 200 nautical miles').waitFor();
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Enter');
    await openSheet(page).waitFor({ state: 'detached' });
    expect(await readingWords(page).dme.textContent()).toBe('5.0');
  });

  test('the needle cannot be put past its full scale', async () => {
    const page = await stage.open();
    await startDemo(page);
    const { needle } = readingWords(page);
    await needle.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowLeft');
    expect(await needle.getAttribute('aria-valuenow')).toBe('-5');
  });

  test('a DME that rises inbound is doubted aloud, and the flight goes on', async () => {
    const page = await stage.open();
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    await page.clock.fastForward(30_000);
    await giveByTyping(page, { ...FIRST_PANEL, dmeNm: 19.2 });
    expect(await flyWords(page).turn.textContent()).toContain('19.2');
    await page.clock.fastForward(30_000);
    await giveByTyping(page, { ...FIRST_PANEL, dmeNm: 9.8 });
    expect(await flyWords(page).toGo.textContent()).toMatch(/^9\.\d/);
  });
});

describe('a leg typed in wrongly', () => {
  test('each field says what it needs, the first one has the focus, and nothing typed is lost', async () => {
    const page = await stage.open({ at: '#/plan' });
    const form = legForm(page);
    const { readyToFly } = pageWords(page);
    await form.field('Station ident').fill('TOOLONG');
    await form.field('Frequency').fill('99.1');
    await form.field('Latitude').fill('46.5');
    await form.field('Longitude').fill('21.25 W');
    await form.field('Elevation').fill('410');
    await form.field('Station declination').fill('7 W');
    await form.field('Course on the OBS').fill('361');
    await form.field('Altitude').fill('4500');
    await readyToFly.click();
    const said = async (label: string): Promise<string> => {
      const field = form.field(label);
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      const about = (await field.getAttribute('aria-describedby')) ?? '';
      return (await page.locator(`[id="${about}"]`).textContent()) ?? '';
    };
    await form.focused.and(form.field('Station ident')).waitFor();
    expect(await said('Station ident')).toContain('1 to 4 letters');
    expect(await said('Frequency')).toContain('108.00 to 117.95');
    expect(await said('Latitude')).toContain('N or S?');
    expect(await said('Course on the OBS')).toContain('0 to 360');
    expect(await form.field('Longitude').getAttribute('aria-invalid')).toBe('false');

    await page.reload();
    expect(await form.field('Station ident').inputValue()).toBe('TOOLONG');
    await form.field('Station ident').fill('QEV');
    await form.field('Frequency').fill('113.35');
    await form.field('Latitude').fill('46.5 N');
    await form.field('Course on the OBS').fill('112');
    await readyToFly.click();
    await flyWords(page).checklist.waitFor();
  });

  test('an aircraft with an impossible airspeed is not kept', async () => {
    const page = await stage.open({ at: '#/settings' });
    await page.getByRole('button', { name: 'Change My aircraft' }).click();
    await page.getByLabel('True airspeed').fill('-95');
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByText('30 to 400').waitFor();
    await page.locator(':focus').and(page.getByLabel('True airspeed')).waitFor();
    await page.getByLabel('True airspeed').fill('105');
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByText('105 kt').waitFor();
  });
});

describe('settings on this device that cannot be read', () => {
  test.each(['{"volume":', '{"volume":7}', '[]', 'null'])(
    '%s: it says so, uses the usual ones, and works',
    async (stored) => {
      const page = await stage.open({ settings: null });
      await page.evaluate((text) => {
        localStorage.setItem('spoken-radial.settings', text);
      }, stored);
      await page.reload();
      await pageWords(page).cautionsRead.click();
      await page.getByRole('alert').getByText('could not be read').waitFor();
      await startDemo(page);
      await giveByTyping(page, FIRST_PANEL);
    },
  );

  test('settings of which one is missing keep the others', async () => {
    const page = await stage.open({
      settings: { cautionsReadAtMs: 1, decimalWord: 'point', voiceOn: false },
    });
    await startDemo(page);
    await giveByTyping(page, FIRST_PANEL);
    expect(await flyWords(page).said.textContent()).toContain('point');
  });
});
