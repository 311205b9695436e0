import type { Locator } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { takeOff } from './air.ts';
import { DEMO_START, INBOUND_DEG, OUTBOUND_DEG } from './demo.ts';
import { lookOver } from './look-over.ts';
import {
  flyWords,
  inSheet,
  legForm,
  openSheet,
  pageWords,
  readingWords,
  sheet,
} from './page-words.ts';
import {
  countReadings,
  flyStretch,
  giveByTyping,
  nextItem,
  readingCounts,
  startDemo,
  typeSentence,
  walkChecklist,
} from './pilot.ts';
import { setStage } from './stage.ts';

const stage = setStage();

const SETTINGS = { cautionsReadAtMs: 1, voiceOn: false, palette: 'auto' };
const inFlight = { isInFlight: true };

describe('every page and sheet, on a tablet and a phone, by day and by night', () => {
  test('around a flight: readable by everybody, nothing cut off, nothing to scroll sideways', async () => {
    const page = await stage.open({ settings: null });
    const words = pageWords(page);
    const problems: string[] = [];
    const look = async (name: string): Promise<void> => {
      problems.push(...(await lookOver(page, name)));
    };
    await words.cautionsRead.waitFor();
    await look('cautions');
    await words.cautionsRead.click();
    await openSheet(page).waitFor({ state: 'detached' });
    await look('flights-none');

    await words.settingsLink.click();
    await words.title.filter({ hasText: 'Settings' }).waitFor();
    await page.getByRole('button', { name: 'Add an aircraft' }).click();
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByText('Cautions').click();
    await look('settings');

    await words.allFlights.click();
    await words.typeInALeg.click();
    await words.readyToFly.waitFor();
    await look('plan');
    await words.addALeg.click();
    await words.readyToFly.click();
    await legForm(page).focused.and(page.locator('[aria-invalid=true]')).waitFor();
    await look('plan-problems');

    stage.expectFault(/404 \(Not Found\).*\/api\/flights\/nowhere\/events/);
    await page.goto(`${stage.address}/#/fly/nowhere`);
    await words.title.filter({ hasText: 'cannot be opened' }).waitFor();
    await look('flight-missing');
    expect(problems).toEqual([]);
  });

  test('before the leg: the checklist, its sheets and the keypad', async () => {
    const page = await stage.open({ settings: SETTINGS });
    const words = flyWords(page);
    const problems: string[] = [];
    const look = async (name: string): Promise<void> => {
      problems.push(...(await lookOver(page, name, inFlight)));
    };
    await startDemo(page);
    await words.next.click();
    await words.listen.waitFor();
    await look('checklist');
    await words.skip.click();
    await openSheet(page).waitFor();
    await look('skip');
    await inSheet(page, 'Close').click();
    await words.listen.click();
    await openSheet(page).waitFor();
    await look('ident');
    await inSheet(page, 'Not right').click();
    await look('ident-doubted');
    await inSheet(page, 'Close').click();
    await readingWords(page).dme.click();
    await openSheet(page).waitFor();
    await inSheet(page, 'Set').click();
    await look('keypad');
    await inSheet(page, 'Close').click();
    await words.back.click();
    await walkChecklist(page, { isStarted: false });
    await look('ready');
    expect(problems).toEqual([]);
  });

  test('in flight: answers, questions, alerts, passage and the sheets over them', async () => {
    const page = await stage.open({ settings: SETTINGS });
    const words = flyWords(page);
    const problems: string[] = [];
    const look = async (name: string): Promise<void> => {
      problems.push(...(await lookOver(page, name, inFlight)));
    };
    const air = takeOff(DEMO_START);
    const fly = async (
      courseDeg: number,
      isOver: () => boolean | Promise<boolean>,
    ): Promise<void> => {
      await flyStretch({ page, air, give: giveByTyping, courseDeg: () => courseDeg, isOver });
    };
    const isShown = (of: Locator, text: string) => async (): Promise<boolean> =>
      (await of.textContent())?.includes(text) === true;

    await startDemo(page);
    await giveByTyping(page, air.panel(INBOUND_DEG));
    await look('fly-first-answer');
    await words.identState.click();
    await inSheet(page, 'Ident confirmed').click();
    await openSheet(page).waitFor({ state: 'detached' });
    while (await words.next.isVisible()) await nextItem(page);
    await fly(INBOUND_DEG, () => air.groundNm() < 8);
    await page.clock.fastForward(10_000);
    await look('fly');
    await words.why.click();
    await look('fly-why');
    await words.why.click();
    await typeSentence(page, 'needle banana');
    await words.problem.waitFor();
    await look('fly-not-understood');
    await readingWords(page).sentence.fill('');
    await words.readings.click();
    await look('readings');
    await inSheet(page, 'Correct').first().click();
    await openSheet(page).waitFor({ state: 'detached' });
    await look('fly-correcting');
    await readingWords(page).clear.click();
    await words.spoken.click();
    await look('spoken');
    await inSheet(page, 'Close').click();
    await words.flight.click();
    await look('flight');
    await inSheet(page, 'Close').click();
    const count = await countReadings(page);
    await giveByTyping(page, { ...air.panel(INBOUND_DEG), needleDots: -4, dmeNm: 14.5 });
    await look('fly-alert');
    await words.undo.click();
    await readingCounts(page, count);
    await fly(INBOUND_DEG, () => air.groundNm() < 1.1);
    await look('fly-near-station');
    await fly(INBOUND_DEG, isShown(words.said, 'Over the station'));
    await look('fly-overhead');
    await fly(INBOUND_DEG, isShown(words.legLine, 'Leg 2'));
    await look('fly-passage');
    await fly(OUTBOUND_DEG, () => air.groundNm() > 13);
    await giveByTyping(page, air.panel(OUTBOUND_DEG));
    await look('fly-arriving');
    await words.flight.click();
    await inSheet(page, 'Finish the flight').click();
    await page.getByRole('heading', { name: /Flight finished/ }).waitFor();
    problems.push(...(await lookOver(page, 'finished')));
    await pageWords(page).allFlights.click();
    await page
      .getByRole('button', { name: /^Delete/ })
      .first()
      .click();
    await sheet(page, 'Delete this flight?').waitFor();
    problems.push(...(await lookOver(page, 'delete')));
    await inSheet(page, 'Keep it').click();
    await openSheet(page).waitFor({ state: 'detached' });
    problems.push(...(await lookOver(page, 'flights')));
    expect(problems).toEqual([]);
  });
});
