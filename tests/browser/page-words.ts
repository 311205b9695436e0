import type { Locator, Page } from 'playwright-core';

// The one place that knows how the page is worded: everything is found as a pilot finds it, by what it
// is and what it is called.

/** What is said, as far as a pilot acts on it. */
export const SAID = {
  /** The next reading is to be taken with the OBS turned: a needle that is stuck stays where it is. */
  obsTurned: /three degrees left/,
  nearStation: /Station in .* miles?\. .*ignore/,
} as const;

/** The pages around a flight. */
export interface PageWords {
  readonly cautions: Locator;
  readonly cautionsRead: Locator;
  readonly title: Locator;
  readonly flyDemo: Locator;
  readonly typeInALeg: Locator;
  readonly settingsLink: Locator;
  readonly allFlights: Locator;
  readonly readyToFly: Locator;
  readonly addALeg: Locator;
  readonly alert: Locator;
}

/** What stands on the pages around a flight. */
export function pageWords(page: Page): PageWords {
  return {
    cautions: page.getByRole('dialog', { name: 'Before you use it' }),
    cautionsRead: page.getByRole('button', { name: 'I have read this' }),
    title: page.getByRole('heading', { level: 1 }),
    flyDemo: page.getByRole('button', { name: 'Fly the demo' }),
    typeInALeg: page.getByRole('link', { name: 'Type in a leg' }),
    settingsLink: page.getByRole('link', { name: 'Settings', exact: true }),
    allFlights: page.getByRole('link', { name: 'All flights' }),
    readyToFly: page.getByRole('button', { name: 'Ready to fly' }),
    addALeg: page.getByRole('button', { name: 'Add a leg' }),
    alert: page.getByRole('alert'),
  };
}

/** What stands on the Fly page before and between readings. */
export interface FlyWords {
  readonly ident: Locator;
  /** The gate in the header; its name says how it stands. */
  readonly identState: Locator;
  readonly legLine: Locator;
  readonly checklist: Locator;
  readonly checkItem: Locator;
  readonly next: Locator;
  readonly listen: Locator;
  readonly again: Locator;
  readonly skip: Locator;
  readonly back: Locator;
  readonly startTheLeg: Locator;
  readonly turn: Locator;
  readonly heading: Locator;
  readonly said: Locator;
  readonly toGo: Locator;
  readonly timeToGo: Locator;
  readonly wind: Locator;
  readonly readingHead: Locator;
  readonly problem: Locator;
  readonly sayAgain: Locator;
  readonly why: Locator;
  readonly undo: Locator;
  readonly readings: Locator;
  readonly spoken: Locator;
  readonly voice: Locator;
  readonly flight: Locator;
  readonly savedState: Locator;
}

/** What stands on the Fly page before and between readings. */
export function flyWords(page: Page): FlyWords {
  const answer = page.getByRole('region', { name: 'Answer' });
  const checklist = page.getByRole('region', { name: 'Checklist' });
  const reading = page.getByRole('region', { name: 'Reading' });
  const banner = page.getByRole('banner');
  const nav = page.getByRole('navigation', { name: 'Flight' });
  const figure = (name: string): Locator =>
    answer
      .locator('dl > div')
      .filter({ has: page.getByRole('term').filter({ hasText: name }) })
      .getByRole('definition')
      .first();
  return {
    ident: banner.getByRole('heading', { level: 1 }),
    identState: banner.getByRole('button', { name: /ident/ }),
    legLine: banner.getByText(/^Leg \d of \d/),
    checklist,
    checkItem: checklist.locator('p.check-item'),
    next: checklist.getByRole('button', { name: 'Next', exact: true }),
    listen: checklist.getByRole('button', { name: 'Listen', exact: true }),
    again: checklist.getByRole('button', { name: 'Again', exact: true }),
    skip: checklist.getByRole('button', { name: 'Skip', exact: true }),
    back: checklist.getByRole('button', { name: 'Back', exact: true }),
    startTheLeg: checklist.getByRole('button', { name: 'Start the leg' }),
    turn: answer.locator('p.turn'),
    heading: answer.locator('p').filter({ has: page.getByText('Heading', { exact: true }) }),
    said: answer.getByRole('status'),
    toGo: figure('To go'),
    timeToGo: figure('Time'),
    wind: figure('Wind'),
    readingHead: reading.getByText(/^(First reading|Next reading|Correcting)/),
    problem: reading.getByRole('alert').filter({ hasText: /\S/ }),
    sayAgain: page.getByRole('button', { name: 'Say again' }),
    why: page.getByRole('button', { name: 'Why', exact: true }),
    undo: page.getByRole('button', { name: 'Undo', exact: true }),
    readings: nav.getByRole('button', { name: /^Readings/ }),
    spoken: nav.getByRole('button', { name: 'Spoken' }),
    voice: nav.getByRole('button', { name: /^Voice is/ }),
    flight: nav.getByRole('button', { name: /^Flight/ }),
    savedState: page.getByRole('contentinfo').getByText(/saved/),
  };
}

/** What the pilot reads into. */
export interface ReadingWords {
  readonly needle: Locator;
  flag(name: 'TO' | 'FROM' | 'OFF'): Locator;
  readonly obs: Locator;
  readonly dme: Locator;
  readonly heading: Locator;
  step(of: 'DME' | 'Heading', way: 'less' | 'more'): Locator;
  readonly sentence: Locator;
  readonly give: Locator;
  readonly asExpected: Locator;
  readonly clear: Locator;
  readonly correctIt: Locator;
}

/** What the pilot reads into. */
export function readingWords(page: Page): ReadingWords {
  const reading = page.getByRole('region', { name: 'Reading' });
  return {
    needle: reading.getByRole('slider', { name: 'Needle' }),
    flag: (name) =>
      reading.getByRole('group', { name: 'Flag' }).getByRole('button', { name, exact: true }),
    obs: reading.getByRole('button', { name: /^OBS/ }),
    dme: reading.getByRole('spinbutton', { name: 'DME' }),
    heading: reading.getByRole('spinbutton', { name: 'Heading' }),
    step: (of, way) => reading.getByRole('button', { name: `${of} ${way}` }),
    sentence: reading.getByRole('textbox', { name: 'Reading or question as a sentence' }),
    give: reading.getByRole('button', { name: 'Give reading' }),
    asExpected: reading.getByRole('button', { name: 'As expected' }),
    clear: reading.getByRole('button', { name: /^(Clear|Leave it)$/ }),
    correctIt: reading.getByRole('button', { name: 'Correct it' }),
  };
}

/** A sheet that lies over the page. */
export function sheet(page: Page, title: string | RegExp): Locator {
  return page.getByRole('dialog', { name: title });
}

/** The only sheet that is open. */
export function openSheet(page: Page): Locator {
  return page.getByRole('dialog');
}

/** A button of a sheet. */
export function inSheet(page: Page, name: string | RegExp): Locator {
  return page.getByRole('dialog').getByRole('button', { name });
}

/** The fields of a leg of one’s own, by their labels. */
export interface LegForm {
  field(label: string | RegExp): Locator;
  choice(name: string): Locator;
  /** What stands beside the field that has the focus. */
  readonly focused: Locator;
}

/** The form of a leg of one’s own; `leg` counts from 0. */
export function legForm(page: Page, leg = 0): LegForm {
  return {
    field: (label) => page.getByLabel(label).nth(leg),
    choice: (name) => page.getByRole('radio', { name, exact: true }).nth(leg),
    focused: page.locator(':focus'),
  };
}
