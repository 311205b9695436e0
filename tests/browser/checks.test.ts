import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { lookOver } from './look-over.ts';
import { NOON_MS, setStage, type Opening } from './stage.ts';

const stage = setStage();

const AS_THE_DEVICE: Opening = {
  settings: { cautionsReadAtMs: NOON_MS, voiceOn: false, palette: 'auto' },
};

interface Typed {
  readonly kind?: string;
  readonly date?: string;
  readonly place?: string;
  readonly station?: string;
  readonly expected?: string;
  readonly indicated: string;
}

async function checksIn(opening: Opening = {}): Promise<Page> {
  const page = await stage.open({ at: '#/checks', ...opening });
  await page.getByText('No check in the log').waitFor();
  return page;
}

/** Fills the form and asks to keep it. The clock of the page stands at noon, 25 November 2026. */
async function logIn(page: Page, typed: Typed): Promise<void> {
  await page.getByRole('button', { name: 'Log a check' }).click();
  await page.getByLabel('Kind').selectOption(typed.kind ?? 'ground-checkpoint');
  if (typed.date !== undefined) await page.getByLabel('Date').fill(typed.date);
  await page.getByLabel('Time').fill('0930');
  await page.getByLabel('Place').fill(typed.place ?? 'Run-up area');
  await page.getByLabel(/^(Station|Test signal)/).fill(typed.station ?? 'QEV 113.35');
  if (typed.expected !== undefined)
    await page.getByLabel(/^(Bearing expected|The other shows)/).fill(typed.expected);
  await page.getByLabel(/^(Bearing indicated|This one shows)/).fill(typed.indicated);
  await page.getByLabel('Who made it').fill('A. Pilot');
  await page.getByRole('button', { name: 'Keep it' }).click();
}

async function download(page: Page, button: string): Promise<string> {
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).click();
  return readFileSync(await (await saving).path(), 'utf8');
}

describe('the log of receiver checks', () => {
  test('tells what a check comes to and when the next is due, and keeps it', async () => {
    const page = await stage.open();
    await page.getByRole('link', { name: 'Receiver checks' }).click();
    await page.getByText('No check in the log').waitFor();
    await logIn(page, { expected: '90', indicated: '94', date: '2026-11-20' });
    await page.getByText('Logged. Passes: 4° high, 4° permitted.').waitFor();
    await page.getByText('Next due by 20 Dec 2026: 25 days left').waitFor();
    await page.reload();
    await page.getByText('Next due by 20 Dec 2026').waitFor();
    await page.getByText('no proof that it is right now').waitFor();
  });

  test('fails a tenth beyond the limit, and an earlier pass does not outweigh it', async () => {
    const page = await checksIn();
    await logIn(page, { expected: '90', indicated: '90', date: '2026-11-20' });
    await page.getByText('Passes: no error').first().waitFor();
    await logIn(page, { kind: 'test-signal', station: 'VOT 108.0', indicated: '355.9' });
    await page.getByText('Logged. Fails: 4.1° low, 4° permitted.').waitFor();
    await page.getByText('Not for IFR until a check passes').waitFor();
    const rows = await page.locator('.logged').allTextContents();
    expect(rows.map((row) => /Test signal|Ground checkpoint/.exec(row)?.[0])).toEqual([
      'Test signal',
      'Ground checkpoint',
    ]);
  });

  test('strikes a wrong check through, brings it back, and never loses it', async () => {
    const page = await checksIn();
    await logIn(page, { expected: '90', indicated: '99' });
    await page.getByText('Not for IFR until a check passes').waitFor();
    await page.getByRole('button', { name: 'Strike through: QEV' }).click();
    await page.getByText('Struck through on 25 Nov 2026').waitFor();
    await page.getByText('No check in the log').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Not for IFR until a check passes').waitFor();
    await page.getByRole('button', { name: 'Strike through: QEV' }).click();
    await page.getByText('Struck through on 25 Nov 2026').waitFor();
    await page.reload();
    await page.getByText('Struck through on 25 Nov 2026').waitFor();
    await page.getByRole('button', { name: 'Bring back: QEV' }).click();
    await page.getByText('Not for IFR until a check passes').waitFor();
  });

  test('says beside each field what it takes, and goes to the first that is wrong', async () => {
    const page = await checksIn();
    await logIn(page, { place: '', expected: '361', indicated: '', date: '2026-11-26' });
    await page.getByText('Expected a time that has been, in UTC').waitFor();
    await page.getByText('Expected where it was made.').waitFor();
    await page.getByText('0 to 360. Not 361.').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('field-dateIso');
    await page.getByLabel('Judged by').selectOption('own');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('an error in degrees, 0.1 to 10').waitFor();
    await page.getByText('whole days, 1 to 366').waitFor();
  });

  test('judges by the rule chosen, keeps the choice, and makes no figure up', async () => {
    const page = await checksIn();
    await page.getByRole('button', { name: 'Log a check' }).click();
    await page.getByLabel('Judged by').selectOption('canada');
    await page.getByRole('dialog').getByText('Check your own regulation.').waitFor();
    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByRole('button', { name: 'Log a check' }).click();
    await page.getByLabel('Judged by').selectOption('canada');
    await page.getByLabel('Kind').selectOption('test-signal');
    await page.getByLabel('Bearing indicated').fill('2');
    await page.getByText('No figure is known here for Canada').waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Log a check' }).click();
    await page.getByLabel('Judged by').selectOption('own');
    await page.getByLabel('Error permitted').fill('2');
    await page.getByLabel('Stands for').fill('10');
    await page.getByLabel('Kind').selectOption('two-receivers');
    await page.getByLabel('Place').fill('Over the harbour');
    await page.getByLabel('Station').fill('QEV');
    await page.getByLabel('Who made it').fill('A. Pilot');
    await page.getByLabel('The other shows').fill('359');
    await page.getByLabel('This one shows').fill('001');
    await page.getByText('Passes: 2° apart, 2° permitted.').waitFor();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await expect.poll(() => page.getByText('Next due by 5 Dec 2026: 10 days left').count()).toBe(2);
    await page.getByRole('button', { name: 'Log a check' }).click();
    expect(await page.getByLabel('Error permitted').inputValue()).toBe('2');
  });

  test('takes whose rules count as a setting, that lasts without a check and says what to check', async () => {
    const page = await checksIn();
    await page.getByText('Judged by 14 CFR 91.171. Check your own regulation.').waitFor();
    await page.getByRole('button', { name: 'Change the rules' }).click();
    await page.getByLabel('Judged by').selectOption('own');
    await page.getByLabel('Error permitted').fill('11');
    await page.getByLabel('Stands for').fill('28');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('an error in degrees, 0.1 to 10').waitFor();
    await page.getByLabel('Error permitted').fill('3');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('Judged by own figures, 3° and 28 days.').waitFor();
    await page.reload();
    await page.getByText('Judged by own figures, 3° and 28 days.').waitFor();
    await logIn(page, { expected: '90', indicated: '93.5' });
    await page.getByText('Logged. Fails: 3.5° high, 3° permitted.').waitFor();
    await page.getByRole('button', { name: 'Change the rules' }).click();
    await page.getByLabel('Judged by').selectOption('us');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('Judged by 14 CFR 91.171.').waitFor();
    await page.getByText('Fails: 3.5° high, 3° permitted.').first().waitFor();
  });

  test('tells where a flight is begun what is overdue, and nothing when all is in order', async () => {
    const page = await checksIn();
    await logIn(page, { expected: '90', indicated: '90', date: '2026-10-20' });
    await page.getByText('Overdue').waitFor();
    for (const at of ['', '#/plan', '#/route']) {
      await page.goto(`${stage.address}/${at}`);
      await page
        .getByText(
          'VOR receiver No. 1: check overdue, the last day was 19 Nov 2026. Check it before IFR.',
        )
        .waitFor();
    }
    await page.getByRole('link', { name: 'Look at the checks' }).click();
    await logIn(page, { expected: '90', indicated: '90' });
    await page.getByText('Next due by 25 Dec 2026').waitFor();
    await page.goto(`${stage.address}/`);
    await page.getByRole('button', { name: 'Fly the demo' }).waitFor();
    await page.waitForLoadState('networkidle');
    expect(await page.getByText('VOR receiver').count()).toBe(0);
  });

  test('leaves as CSV, and as JSON that another device takes in once', async () => {
    const page = await checksIn();
    await logIn(page, { expected: '90', indicated: '86', place: '=Pier, "north"' });
    await page.getByText('Logged.').waitFor();
    const [row] = parse(await download(page, 'Save as CSV'), { columns: true });
    expect(row).toMatchObject({
      date_utc: '2026-11-25',
      time_utc: '09:30',
      place: `'=Pier, "north"`,
      error_deg: '-4',
      permitted_deg: '4',
      result: 'pass',
      struck_through: '',
    });
    const json = Buffer.from(await download(page, 'Save as JSON'));
    const other = await checksIn();
    const file = { name: 'checks.json', mimeType: 'application/json', buffer: json };
    await other.setInputFiles('#checks-file', file);
    await other.getByText('1 line was taken in').waitFor();
    await other.getByText('Next due by 25 Dec 2026').waitFor();
    await other.setInputFiles('#checks-file', file);
    await other.getByText('Everything in it was here already').waitFor();
    await other.setInputFiles('#checks-file', { ...file, buffer: Buffer.from('{"a":1}') });
    await other.getByText('checks.json was not taken in').waitFor();
    expect(await other.locator('.logged').count()).toBe(1);
  });
});

test('looks right at both sizes, day and night, and can be used without seeing it', async () => {
  const page = await checksIn(AS_THE_DEVICE);
  expect(await lookOver(page, 'checks-empty')).toEqual([]);
  await logIn(page, { expected: '90', indicated: '92', date: '2026-10-20' });
  await page.getByText('Overdue').waitFor();
  await logIn(page, { kind: 'two-receivers', expected: '90', indicated: '99' });
  await page.getByText('Logged. Fails').waitFor();
  await page.getByRole('button', { name: 'Strike through: QEV 113.35, 20 Oct' }).click();
  await page.getByText('Struck through on').waitFor();
  expect(await lookOver(page, 'checks')).toEqual([]);
  await page.getByRole('button', { name: 'Log a check' }).click();
  expect(await lookOver(page, 'checks-form')).toEqual([]);
  await page.getByRole('button', { name: 'Close' }).click();
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button').count()).toBe(0);
  expect(await page.getByText('Signed:').count()).toBe(1);
});
