import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { takeOff } from './air.ts';
import type { Air } from './air.ts';
import { QEV } from './demo.ts';
import { flyWords, inSheet, openSheet, pageWords } from './page-words.ts';
import {
  countReadings,
  nowMs,
  readingCounts,
  shownHeading,
  typeSentence,
  typeStation,
} from './pilot.ts';
import { NOON_MS, setStage } from './stage.ts';

const stage = setStage();

const COURSE_DEG = 112;
const FIGURES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'niner'];
const OFFER = /To find the range, if you want it: turn (?:left|right), heading (\w+) (\w+) (\w+),/;

const figures = (bearingDeg: number): string => String(bearingDeg).padStart(3, '0');

async function beginWithoutDme(page: Page): Promise<void> {
  const form = await typeStation(page);
  await form.field('Course on the OBS').fill(String(COURSE_DEG));
  await pageWords(page).readyToFly.click();
  await flyWords(page).checklist.waitFor();
  await flyWords(page).identState.click();
  await inSheet(page, 'Ident confirmed').click();
  await openSheet(page).waitFor({ state: 'detached' });
}

const inWords = (words: readonly string[]): number =>
  Number(words.map((each) => FIGURES.indexOf(each)).join(''));

/** What the pilot types: needle and flag on the course; with the station abeam the radial. */
function sentenceOf(air: Air, isAbeam: boolean): string {
  const { headingDeg, needleDots } = air.panel(COURSE_DEG);
  const radialDeg = Math.round((292 + air.offCourseDeg(292, 'from') + 360) % 360);
  if (isAbeam) return `heading ${figures(headingDeg)}, radial ${figures(radialDeg)}`;
  const side = (needleDots ?? 0) < 0 ? 'half left' : 'half right';
  return `heading ${figures(headingDeg)}, ${needleDots === 0 ? 'centred' : side}, to`;
}

/** Flies the answers, takes the offer, and gives a reading whenever one is due, until the range is found. */
async function flyUntilFound(page: Page, air: Air): Promise<{ answers: string[]; found: string }> {
  const words = flyWords(page);
  const answers: string[] = [];
  let abeamDeg: number | null = null;
  for (let step = 0; step < 200; step += 1) {
    air.flyUntil(await nowMs(page));
    if (/now|First/.test((await words.readingHead.textContent()) ?? '')) {
      const before = await countReadings(page);
      await typeSentence(page, sentenceOf(air, abeamDeg !== null));
      await readingCounts(page, before + 1);
      const answer = (await words.said.allTextContents()).join(' ');
      answers.push(answer);
      const heading = OFFER.exec(answer)?.slice(1);
      if (heading !== undefined) abeamDeg = inWords(heading);
      if (answer.includes('Range found')) return { answers, found: answer };
    }
    air.turnTo(abeamDeg ?? (await shownHeading(page)));
    await page.clock.fastForward(5000);
  }
  throw new Error(`The range was not found: ${answers.join(' | ')}`);
}

describe('a leg without a distance', () => {
  test('is offered the bearing-change check, and flown as offered it finds the range with a band', async () => {
    const page = await stage.open({ at: '#/plan' });
    await beginWithoutDme(page);
    const words = flyWords(page);
    const air = takeOff({
      beacon: QEV,
      radialDeg: COURSE_DEG + 180,
      groundNm: 18,
      altitudeFt: 4500,
      headingDeg: 110,
      trueAirspeedKt: 95,
      windFromDegTrue: 20,
      windKt: 12,
      dateIso: '2026-11-25',
      startMs: NOON_MS,
    });
    const { answers, found } = await flyUntilFound(page, air);
    expect(answers.filter((each) => OFFER.test(each))).toHaveLength(1);
    const toldNm = inWords(/Range found: (\w+) (\w+) miles/.exec(found)?.slice(1) ?? []);
    // Two minutes' flight off the course cannot do better than a third, with a wind that nobody knows.
    expect(Math.abs(toldNm / air.groundNm() - 1)).toBeLessThan(0.33);
    expect(found).toMatch(/give or take \w+\. Set course one one two again\./);
    await page.clock.fastForward(10_000);
    expect(await words.toGo.textContent()).toMatch(/^\d+\.\d$/);
    await typeSentence(page, 'how far to go');
    await words.said.filter({ hasText: 'miles to go' }).waitFor();
  });
});
