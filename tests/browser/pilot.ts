import type { Locator, Page } from 'playwright-core';
import type { Air, Panel } from './air.ts';
import { QEV } from './demo.ts';
import {
  SAID,
  flyWords,
  inSheet,
  legForm,
  openSheet,
  pageWords,
  readingWords,
  sheet,
  type LegForm,
} from './page-words.ts';

// The pilot of the tests: looks at the page, flies what it says, reads the panel into it.

/** The time by the page’s own clock. */
export function nowMs(page: Page): Promise<number> {
  return page.evaluate(() => Date.now());
}

/** The heading in very large figures. */
export async function shownHeading(page: Page): Promise<number> {
  const text = await flyWords(page).heading.textContent();
  const figures = /\d{3}/.exec(text ?? '')?.[0];
  if (figures === undefined) throw new Error(`No heading on the page: "${text ?? ''}"`);
  return Number(figures);
}

/** How the pilot hands a reading to the page. */
export type Giver = (page: Page, panel: Panel) => Promise<void>;

/** Types the demo's station and its altitude in; how it is flown is left to the test. */
export async function typeStation(page: Page): Promise<LegForm> {
  const form = legForm(page);
  await form.field('Station ident').fill(QEV.ident);
  await form.field('Frequency').fill('113.35');
  await form.field('Latitude').fill('46.5 N');
  await form.field('Longitude').fill('21.25 W');
  await form.field('Elevation').fill(String(QEV.elevationFt));
  await form.field('Station declination').fill('7 W');
  await form.field('Altitude').fill('4500');
  return form;
}

const NEEDLE_MARGIN = 20 / 480;

/** Puts the finger where the needle stands on the strip. */
export async function tapNeedle(page: Page, dots: number, fullScale = 5): Promise<void> {
  const { needle } = readingWords(page);
  const box = await needle.boundingBox();
  if (box === null) throw new Error('The needle strip is not in sight.');
  const x = box.width * (0.5 + (dots / fullScale) * (0.5 - NEEDLE_MARGIN));
  await needle.click({ position: { x, y: box.height / 2 } });
}

type Figure = 'DME' | 'Heading' | 'Course set on the OBS';

/** Taps a figure on the keypad. */
export async function tapFigure(page: Page, of: Figure, text: string): Promise<void> {
  const words = readingWords(page);
  await { DME: words.dme, Heading: words.heading, 'Course set on the OBS': words.obs }[of].click();
  const keypad = sheet(page, of);
  for (const key of text) {
    const name = key === '.' ? 'decimal' : key;
    await keypad.getByRole('button', { name, exact: true }).click();
  }
  await keypad.getByRole('button', { name: 'Set', exact: true }).click();
}

const figures = (bearingDeg: number): string => String(bearingDeg).padStart(3, '0');

const MOST_STEPS = 4;

/** Brings a figure to a value: a few taps on its stepper, or the keypad when it is far off. */
async function bring(
  page: Page,
  of: 'DME' | 'Heading',
  value: number,
  step: number,
): Promise<void> {
  const words = readingWords(page);
  const figure = of === 'DME' ? words.dme : words.heading;
  const text = await figure.getAttribute('aria-valuenow');
  const steps = text === null ? NaN : Math.round((value - Number(text)) / step);
  if (steps === 0) return;
  if (!(Math.abs(steps) <= MOST_STEPS)) {
    await tapFigure(page, of, of === 'DME' ? value.toFixed(1) : figures(value));
    return;
  }
  const button = words.step(of, steps < 0 ? 'less' : 'more');
  for (let tap = 0; tap < Math.abs(steps); tap += 1) await button.click();
}

/** Gives a reading with the finger: strip, flag, steppers and keypad, then the button. */
export const giveByTapping: Giver = async (page, panel) => {
  const words = readingWords(page);
  const before = await countReadings(page);
  const obs = figures(panel.courseSetDeg);
  if (!((await words.obs.textContent()) ?? '').includes(obs))
    await tapFigure(page, 'Course set on the OBS', obs);
  await words.flag(panel.flag).click();
  if (panel.needleDots !== null) await tapNeedle(page, panel.needleDots);
  await bring(page, 'DME', panel.dmeNm, 0.1);
  await bring(page, 'Heading', panel.headingDeg, 1);
  await words.give.click();
  await readingCounts(page, before + 1);
};

const NUMBERS = ['', 'one', 'two', 'three', 'four', 'five'];

function needleSentence(dots: number): string {
  const size = Math.abs(dots);
  const side = dots < 0 ? 'left' : 'right';
  if (size === 0) return 'needle centred';
  if (size >= 5) return `full scale ${side}`;
  const whole = NUMBERS[Math.floor(size)] ?? '';
  if (size === Math.floor(size)) return `${whole} ${side}`;
  return whole === '' ? `half ${side}` : `${whole} and a half ${side}`;
}

/** A panel as the pilot would type it: "heading 125, course 112, one and a half left, distance 7.2, to". */
function sentenceOf(panel: Panel): string {
  const heading = `heading ${figures(panel.headingDeg)}, course ${figures(panel.courseSetDeg)}`;
  const needle = panel.needleDots === null ? [] : [needleSentence(panel.needleDots)];
  const flag = panel.flag === 'OFF' ? 'flag off' : panel.flag.toLowerCase();
  return [heading, ...needle, `distance ${panel.dmeNm.toFixed(1)}`, flag].join(', ');
}

/** Types a sentence and sends it off. */
export async function typeSentence(page: Page, sentence: string): Promise<void> {
  const { sentence: line } = readingWords(page);
  await line.fill(sentence);
  await line.press('Enter');
}

/** Gives a reading as one typed sentence. */
export const giveByTyping: Giver = async (page, panel) => {
  const before = await countReadings(page);
  await typeSentence(page, sentenceOf(panel));
  await readingCounts(page, before + 1);
};

/** How many readings count, by the button that lists them. */
export async function countReadings(page: Page): Promise<number> {
  const text = await flyWords(page).readings.textContent();
  return Number(/\d+/.exec(text ?? '')?.[0] ?? NaN);
}

/** Waits until so many readings count. */
export async function readingCounts(page: Page, count: number): Promise<void> {
  await flyWords(page)
    .readings.filter({ hasText: `Readings ${count}` })
    .waitFor();
}

/** One reading as it was given, with what was true at that moment. */
export interface Given {
  readonly panel: Panel;
  readonly groundNm: number;
  /** Dots off the course of the leg, whatever the OBS was set to. */
  readonly offCourseDots: number;
  /** What the page showed then. */
  readonly toGoNm: number;
  readonly said: string;
}

/** How a stretch is flown. */
export interface Stretch {
  readonly page: Page;
  readonly air: Air;
  readonly give: Giver;
  /** The course that the page has set for the leg that it shows. */
  readonly courseDeg: () => number;
  /** Looked at after each step; true ends the stretch. */
  readonly isOver: () => boolean | Promise<boolean>;
  readonly stepS?: number;
  readonly mostReadings?: number;
}

const MOST_STEPS_OF_A_STRETCH = 400;

/** The page tests the needle by having the OBS turned; else it is the course of the leg. */
async function obsNow(page: Page, courseDeg: number): Promise<number> {
  const said = (await flyWords(page).said.allTextContents()).join(' ');
  return SAID.obsTurned.test(said) ? (courseDeg + 357) % 360 : courseDeg;
}

/**
 * Flies what the page shows, step by step, and gives a reading whenever it asks for one and whenever the
 * flag turns: as a pilot would.
 */
export async function flyStretch(stretch: Stretch): Promise<readonly Given[]> {
  const { page, air, give, courseDeg, isOver, stepS = 5, mostReadings = 60 } = stretch;
  const given: Given[] = [];
  for (let step = 0; step < MOST_STEPS_OF_A_STRETCH; step += 1) {
    air.flyUntil(await nowMs(page));
    const panel = air.panel(await obsNow(page, courseDeg()));
    if (await isReadingDue(page, panel, given.at(-1))) {
      if (given.length >= mostReadings)
        throw new Error(`The page asked for more than ${mostReadings} readings.`);
      await give(page, panel);
      given.push(await seen(stretch, panel));
    }
    if (await isOver()) return given;
    air.turnTo(await shownHeading(page));
    await page.clock.fastForward(1000 * stepS);
  }
  throw new Error(`The stretch did not end: ${given.map((each) => each.said).join(' | ')}`);
}

async function isReadingDue(page: Page, panel: Panel, last: Given | undefined): Promise<boolean> {
  const head = await flyWords(page).readingHead.textContent();
  const hasFlagTurned = last !== undefined && panel.flag !== last.panel.flag;
  return hasFlagTurned || /now|First/.test(head ?? '');
}

async function seen({ page, air, courseDeg }: Stretch, panel: Panel): Promise<Given> {
  const words = flyWords(page);
  const text = async (of: Locator): Promise<string> => (await of.textContent()) ?? '';
  return {
    panel,
    groundNm: air.groundNm(),
    offCourseDots: air.offCourseDeg(courseDeg(), panel.flag === 'TO' ? 'to' : 'from') / 2,
    toGoNm: Number(await text(words.toGo)),
    said: await text(words.said),
  };
}

/** Starts the demo from the list of flights; the Fly page is there afterwards. */
export async function startDemo(page: Page): Promise<void> {
  await pageWords(page).flyDemo.click();
  await flyWords(page).checklist.waitFor();
}

/** Goes through the checklist by tapping: everything done, the ident confirmed, the leg started. */
export async function walkChecklist(page: Page, { isStarted = true } = {}): Promise<void> {
  const words = flyWords(page);
  await words.next.click();
  await words.listen.click();
  await inSheet(page, 'Ident confirmed').click();
  await openSheet(page).waitFor({ state: 'detached' });
  while (!(await words.startTheLeg.isVisible())) await nextItem(page);
  if (!isStarted) return;
  await words.startTheLeg.click();
  await words.startTheLeg.waitFor({ state: 'detached' });
}

/** Ticks the item that is due; another one is due afterwards, or none. */
export async function nextItem(page: Page): Promise<void> {
  const words = flyWords(page);
  const item = await words.checkItem.textContent();
  await words.next.click();
  await words.checkItem.filter({ hasText: item ?? '' }).waitFor({ state: 'detached' });
}

/** All that was said so far, oldest first, from the sheet that lists it. */
export async function spokenSoFar(page: Page): Promise<readonly string[]> {
  await flyWords(page).spoken.click();
  const items = sheet(page, 'Spoken so far').getByRole('listitem');
  await items.first().waitFor();
  const lines = await items.allTextContents();
  await inSheet(page, 'Close').click();
  return lines.toReversed();
}

/** Goes through the checklist with typed sentences only. */
export async function walkChecklistByTyping(page: Page): Promise<void> {
  const words = flyWords(page);
  await typeSentence(page, 'next step');
  await words.listen.waitFor();
  await typeSentence(page, 'ident confirmed');
  while (!(await words.startTheLeg.isVisible())) {
    const item = await words.checkItem.textContent();
    await typeSentence(page, 'next step');
    await words.checkItem.filter({ hasNotText: item ?? '' }).waitFor();
  }
  await typeSentence(page, 'next step');
  await words.startTheLeg.waitFor({ state: 'detached' });
}
