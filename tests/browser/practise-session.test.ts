import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { writePracticeLog } from '../../src/ident/drill/read-log.ts';
import { copy, logFrom, written } from '../unit/practice-log.ts';
import { pattern } from '../../src/ident/morse.ts';
import { lookOver } from './look-over.ts';
import { heardSoFar, isSound, keyingOf, quiet, tapSound } from './sound-tap.ts';
import { PHONE, setStage } from './stage.ts';

const stage = setStage();

const PRACTISE = '#/idents/practise';

const AS_THE_DEVICE = { cautionsReadAtMs: 1, voiceOn: false, palette: 'auto' };

interface Asked {
  readonly id: string;
  readonly sent: { readonly kind: string; readonly ident?: string };
  readonly plate: string | null;
}

/** The question that waits for its answer, as the device has kept it; null: none yet. */
function askedLast(page: Page): Promise<Asked | null> {
  return page.evaluate(
    () =>
      new Promise<Asked | null>((resolve, reject) => {
        const opening = indexedDB.open('spoken-radial-practice');
        opening.onerror = () => {
          reject(new Error('no practice log'));
        };
        opening.onsuccess = () => {
          const disk = opening.result;
          const reading = disk.transaction('events').objectStore('events').getAll();
          reading.onsuccess = () => {
            disk.close();
            const events = reading.result as {
              readonly id: string;
              readonly kind: string;
              readonly question?: Omit<Asked, 'id'>;
            }[];
            const last = events.filter(({ kind }) => kind !== 'opened').at(-1);
            resolve(
              last?.kind === 'asked' && last.question !== undefined
                ? { id: last.id, ...last.question }
                : null,
            );
          };
        };
      }),
  );
}

/** Waits for a question other than the one before. */
async function nextAsked(page: Page, before: string | null): Promise<Asked> {
  const isNew = (asked: Asked | null): asked is Asked => asked !== null && asked.id !== before;
  await expect.poll(async () => isNew(await askedLast(page)), { timeout: 20_000 }).toBe(true);
  const found = await askedLast(page);
  if (!isNew(found)) throw new Error('nothing was asked');
  return found;
}

/** Eight sessions a few days apart: M half the time taken for N, the noise threshold getting better. */
function weeksOfPractice(): ReturnType<typeof logFrom>['events'] {
  const log = logFrom(Date.UTC(2026, 9, 1, 18));
  for (let session = 0; session < 8; session += 1) {
    log.start('mixed');
    for (const ident of ['TEN', 'MAT', 'EAT', 'MIN']) {
      log.answer(copy(ident), written(ident === 'MAT' ? 'NAT' : ident));
      const noisy = copy(ident, { purpose: 'noise', snrDb: 10 });
      for (const isRight of [true, true, session % 2 === 0 && ident === 'TEN']) {
        log.answer(noisy, written(isRight ? ident : 'EEE'));
      }
      log.answer(noisy, written(ident));
      log.answer(noisy, written(ident));
    }
    log.end();
    log.wait(3 * 24 * 60);
  }
  return log.events;
}

const question = (page: Page) => page.getByRole('group', { name: 'Question' });

async function tabTo(page: Page, name: string): Promise<void> {
  for (let tab = 0; tab < 60; tab += 1) {
    await page.keyboard.press('Tab');
    const focus = page.locator(':focus');
    if ((await focus.count()) > 0 && (await focus.textContent())?.includes(name) === true) return;
  }
  throw new Error(`"${name}" cannot be reached by Tab.`);
}

/** Answers by single keys, as a pilot does who hears it right. */
async function answerByKeys(page: Page, { sent, plate }: Asked): Promise<void> {
  if (sent.kind !== 'ident') await page.keyboard.press('0');
  else if (plate === null) {
    await page.keyboard.type((sent.ident ?? '').toLowerCase());
    await page.keyboard.press('Enter');
  } else await page.keyboard.press(sent.ident === plate ? 'y' : 'n');
}

describe('a practice session', () => {
  test('is played to its end by keyboard alone, and its answers are kept', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE });
    await page.getByRole('button', { name: 'Start' }).waitFor();
    await page.getByRole('radio', { name: '20' }).focus();
    await page.keyboard.press('ArrowLeft');
    expect(await page.getByRole('radio', { name: '10' }).isChecked()).toBe(true);
    await tabTo(page, 'Start');
    await page.keyboard.press('Enter');
    let before: string | null = null;
    for (let number = 1; number <= 10; number += 1) {
      const asked = await nextAsked(page, before);
      before = asked.id;
      await question(page).waitFor();
      await page.getByText(`Question ${number} of 10`).waitFor();
      if (number === 2) await page.keyboard.press('Space');
      await answerByKeys(page, asked);
      await page.getByRole('status').filter({ hasText: 'Right.' }).waitFor();
      await page.keyboard.press('Enter');
    }
    await page.getByRole('status').filter({ hasText: '10 of 10 right' }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByText('10 answers, kept on this device only.').waitFor();
    await page.reload();
    await page.getByText('10 answers, kept on this device only.').waitFor();
  });

  test('shows what was taken wrong beside what was sent, and marks the element that differs', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE, settings: AS_THE_DEVICE });
    await page.getByRole('button', { name: 'Start' }).click();
    const asked = await nextAsked(page, null);
    expect(asked.plate).toBeNull();
    const sent = asked.sent.ident ?? '';
    const wrong = sent === 'N' ? 'M' : 'N';
    await page.getByRole('textbox', { name: 'Letters heard' }).waitFor();
    await page.keyboard.type(wrong);
    await page.keyboard.press('Enter');
    await page
      .getByRole('status')
      .filter({ hasText: `Not right. It was ${sent}` })
      .waitFor();
    expect(await page.locator('.differs').count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: `Hear ${sent}, then ${wrong}` }).click();
    await page.getByText('Your answer').waitFor();
    expect(await lookOver(page, 'practise-taught')).toEqual([]);
  });

  test('goes on with the same question after the page was loaded again', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE });
    await page.getByRole('button', { name: 'Start' }).click();
    const asked = await nextAsked(page, null);
    await page.reload();
    await page.getByRole('button', { name: 'Go on with it' }).click();
    await question(page).waitFor();
    expect(await askedLast(page)).toEqual(asked);
    await page.getByRole('button', { name: 'End the session' }).click();
    await page.getByText('Nothing was answered.').waitFor();
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByText('Nothing answered yet.').waitFor();
  });

  test('takes letters tapped, and a mistaken tap back before it is answered', async () => {
    const page = await stage.open({
      hasOwnClock: false,
      at: PRACTISE,
      size: PHONE,
      hasTouch: true,
    });
    await page.getByRole('button', { name: 'Start' }).tap();
    const asked = await nextAsked(page, null);
    const field = page.getByRole('textbox', { name: 'Letters heard' });
    const pad = page.getByRole('group', { name: 'Letters', exact: true });
    await pad.getByRole('button', { name: 'Q', exact: true }).tap();
    expect(await field.inputValue()).toBe('Q');
    await pad.getByRole('button', { name: 'Rub out the last letter' }).tap();
    expect(await field.inputValue()).toBe('');
    await page.getByRole('button', { name: /^Answer/ }).tap();
    await page.getByRole('alert').filter({ hasText: 'Write what you heard' }).waitFor();
    await pad.getByRole('button', { name: asked.sent.ident ?? '', exact: true }).tap();
    await page.getByRole('button', { name: /^Answer/ }).tap();
    await page.getByRole('status').filter({ hasText: 'Right.' }).waitFor();
  });
});

describe('without a server', () => {
  test('a session goes on, also after a reload, and keeps its answers', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE });
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      while (navigator.serviceWorker.controller === null)
        await new Promise((resolve) => {
          navigator.serviceWorker.addEventListener('controllerchange', resolve, { once: true });
        });
    });
    await page.getByRole('button', { name: 'Start' }).click();
    const first = await nextAsked(page, null);
    await page.getByText('What was it?').waitFor();
    await page.context().setOffline(true);
    stage.expectFault(/ERR_INTERNET_DISCONNECTED/);
    await answerByKeys(page, first);
    await page.getByRole('status').filter({ hasText: 'Right.' }).waitFor();
    await page.reload();
    await page.getByRole('button', { name: 'Go on with it' }).click();
    const second = await nextAsked(page, first.id);
    await page.getByText('What was it?').waitFor();
    await answerByKeys(page, second);
    await page.getByRole('status').filter({ hasText: 'Right.' }).waitFor();
    expect(await page.getByRole('alert').filter({ hasText: /\S/ }).count()).toBe(0);
  });
});

describe('the sound of a question', () => {
  test('is keyed as ITU-R M.1677-1 has the letter, at 7 words a minute', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE, scripts: [tapSound] });
    await page.getByText('With a way in').waitFor();
    await page.getByText('As on the air').click();
    await page.getByRole('button', { name: 'Start' }).click();
    const asked = await nextAsked(page, null);
    await page.getByText('What was it?').waitFor();
    await quiet(page, 600);
    // A tone up to 50 Hz off is still the station's: the windows are told by level alone.
    const heard = (await heardSoFar(page)).map((each) => ({
      ...each,
      toneShare: isSound(each) ? 1 : 0,
    }));
    expect(keyingOf(heard, 7)).toBe(pattern(asked.sent.ident ?? ''));
  });
});

describe('the practice page', () => {
  test('is fit to be read and used, empty and with a question, at both sizes and in both palettes', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE, settings: AS_THE_DEVICE });
    await page.getByText('Nothing answered yet.').waitFor();
    expect(await lookOver(page, 'practise-empty')).toEqual([]);
    await page.getByRole('button', { name: 'Start' }).click();
    let asked = await nextAsked(page, null);
    await question(page).waitFor();
    expect(await lookOver(page, 'practise-copy')).toEqual([]);
    for (let number = 1; number <= 2; number += 1) {
      await page.getByRole('textbox', { name: 'Letters heard' }).focus();
      await answerByKeys(page, asked);
      await page.getByRole('status').filter({ hasText: 'Right.' }).waitFor();
      await page.keyboard.press('Enter');
      asked = await nextAsked(page, asked.id);
      await question(page).waitFor();
    }
    expect(asked.plate).not.toBeNull();
    expect(await lookOver(page, 'practise-plate')).toEqual([]);
    await page.keyboard.press('y');
    await page
      .getByRole('status')
      .filter({ hasText: /^(Right|Not right)/ })
      .waitFor();
    await page.getByRole('button', { name: 'End the session' }).click();
    await page.getByRole('heading', { name: 'The session' }).waitFor();
    expect(await lookOver(page, 'practise-summary')).toEqual([]);
  });

  test('shows letters, mixed pairs and the threshold over the weeks as a picture', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE, settings: AS_THE_DEVICE });
    await page.getByText('Nothing answered yet.').waitFor();
    await page.getByLabel('Take in a file').setInputFiles({
      name: 'weeks.json',
      mimeType: 'application/json',
      buffer: Buffer.from(writePracticeLog(weeksOfPractice())),
    });
    await page.getByText(/lines were taken in from weeks.json/).waitFor();
    const plot = page.getByRole('img', { name: /^Threshold in noise: .* dB, .* dB/ });
    await plot.waitFor();
    await page.getByRole('listitem').filter({ hasText: 'M and N 8 of 32' }).waitFor();
    await page.getByRole('button', { name: /^M due kept .*, 8 of 16 right/ }).waitFor();
    await page.getByRole('button', { name: 'Hear M, then N' }).click();
    expect(await lookOver(page, 'practise-progress')).toEqual([]);
    await page.getByRole('button', { name: /^I know these/ }).click();
    await page.getByRole('button', { name: 'I know these: take up H V F L B X' }).waitFor();
  });

  test('gives the log as a file that another device takes in, once', async () => {
    const page = await stage.open({ hasOwnClock: false, at: PRACTISE });
    await page.getByRole('button', { name: 'Start' }).click();
    const asked = await nextAsked(page, null);
    await question(page).waitFor();
    await answerByKeys(page, asked);
    await page.getByRole('status').filter({ hasText: 'Right.' }).waitFor();
    await page.getByRole('button', { name: 'End the session' }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    const [saving] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    const file = await saving.path();
    const other = await stage.open({ hasOwnClock: false, at: PRACTISE });
    await other.getByText('Nothing answered yet.').waitFor();
    await other.getByLabel('Take in a file').setInputFiles(file);
    await other.getByText(/^4 lines were taken in/).waitFor();
    await other.getByText('1 answer, kept on this device only.').waitFor();
    await other.getByLabel('Take in a file').setInputFiles(file);
    await other.getByText('Everything in it was here already.').waitFor();
    await other.getByLabel('Take in a file').setInputFiles({
      name: 'flights.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('ident,right\n'),
    });
    await other.getByRole('alert').filter({ hasText: 'flights.csv was not taken in' }).waitFor();
    await other.getByText('1 answer, kept on this device only.').waitFor();
  });
});
