import type { Locator, Page } from 'playwright-core';

/** What stands on the page of idents. */
export interface IdentWords {
  section(name: string): Locator;
  readonly expected: Locator;
  readonly listen: Locator;
  readonly stopListening: Locator;
  readonly cancel: Locator;
  readonly file: Locator;
  readonly verdict: Locator;
  readonly letters: Locator;
  readonly tone: Locator;
  readonly picture: Locator;
  readonly problem: Locator;
}

/** What stands on the page of idents. */
export function identWords(page: Page): IdentWords {
  const figure = (name: string): Locator =>
    page
      .locator('dl.heard > div')
      .filter({ has: page.getByRole('term').filter({ hasText: name }) })
      .getByRole('definition');
  return {
    section: (name) =>
      page.getByRole('navigation', { name: 'Idents' }).getByRole('link', { name, exact: true }),
    expected: page.getByLabel('Ident on the chart'),
    listen: page.getByRole('button', { name: /^Listen( again)?$/ }),
    stopListening: page.getByRole('button', { name: 'Stop listening' }),
    cancel: page.getByRole('button', { name: 'Cancel' }),
    file: page.locator('input[type=file]'),
    verdict: page.locator('.verdict .headline'),
    letters: figure('Letters'),
    tone: figure('Tone'),
    picture: page.getByRole('img', { name: /^Level of the tone/ }),
    problem: page.locator('.listen').getByRole('alert'),
  };
}
