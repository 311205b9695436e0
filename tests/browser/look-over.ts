import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';
import { PHONE, TABLET } from './stage.ts';

const SCREENSHOTS = path.join(import.meta.dirname, '..', '..', 'build', 'screenshots');

// Put in by the debugger’s door: the page’s security policy would not let a script tag in.
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const RULES: RunOptions = {
  runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] },
  resultTypes: ['violations'],
};

declare const axe: { run(options: RunOptions): Promise<AxeResults> };

async function accessProblems(page: Page): Promise<readonly string[]> {
  const isThere = await page.evaluate(() => 'axe' in globalThis);
  if (!isThere) await page.evaluate(AXE);
  const { violations } = await page.evaluate((rules) => axe.run(rules), RULES);
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${help}\n  ${html}\n  ${failureSummary ?? ''}`),
  );
}

/** Text that does not fit, parts that stick out sideways. */
function misfits(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) found.push(`scrolls sideways: ${scrollWidth} > ${clientWidth}`);
    const sheet = document.querySelector('dialog[open]');
    // What lies inside a drawing is cut off at its edge.
    const parts = (sheet ?? document.body).querySelectorAll<HTMLElement>('*:not(svg *)');
    for (const each of parts) {
      const box = each.getBoundingClientRect();
      if (box.width < 2 || box.height < 2 || getComputedStyle(each).visibility === 'hidden')
        continue;
      const name = `${each.tagName} "${each.textContent.trim().slice(0, 40)}"`;
      if (box.right > clientWidth + 1 || box.left < -1) found.push(`sticks out: ${name}`);
      const isControl = each.matches('button, a.button, select, dd, dt, label');
      if (isControl && each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0)
        found.push(`too narrow for its text: ${name}`);
    }
    return found;
  });
}

const FINGER_PX = 57;
const HURRY_PX = 76;
/** What is used in a hurry: 20 mm. Everything else in flight: 15 mm, at 96 px to the inch. */
const IN_A_HURRY = ['Next', 'Listen', 'Give reading', 'As expected', 'Correct it', 'Start the leg'];

interface Box {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** Targets that a finger may miss in turbulence. */
async function smallTargets(page: Page): Promise<readonly string[]> {
  const boxes = await page.evaluate((): Box[] => {
    const root = document.querySelector('dialog[open]') ?? document.querySelector('.fly');
    const targets = root?.querySelectorAll<HTMLElement>(
      'button, a, select, summary, label:has(input), input[type=text], [role=slider], [role=spinbutton]',
    );
    return [...(targets ?? [])].flatMap((each) => {
      const { width, height } = each.getBoundingClientRect();
      if (width === 0 || height === 0) return [];
      const name = each.getAttribute('aria-label') ?? each.textContent.trim();
      return [{ name, width, height }];
    });
  });
  if (boxes.length === 0) return ['nothing to touch'];
  return boxes
    .filter(({ name, width, height }) => {
      const least = IN_A_HURRY.includes(name) ? HURRY_PX : FINGER_PX;
      return Math.min(width, height) < least - 0.5;
    })
    .map(({ name, width, height }) => `${name}: ${width.toFixed(0)} x ${height.toFixed(0)} px`);
}

/** What is wrong with the page as it stands, at both sizes and in both palettes; leaves pictures of it. */
export async function lookOver(
  page: Page,
  name: string,
  { isInFlight = false } = {},
): Promise<readonly string[]> {
  mkdirSync(SCREENSHOTS, { recursive: true });
  const problems: string[] = [];
  for (const [device, size] of Object.entries({ tablet: TABLET, phone: PHONE })) {
    await page.setViewportSize(size);
    for (const [palette, colorScheme] of [
      ['day', 'light'],
      ['night', 'dark'],
    ] as const) {
      await page.emulateMedia({ colorScheme });
      await page.locator(`html[data-light=${palette}]`).waitFor();
      const picture = path.join(SCREENSHOTS, `${name}-${device}-${palette}.png`);
      // In flight what lies below the edge is not there.
      await page.screenshot({ path: picture, fullPage: !isInFlight });
      const found = [...(await accessProblems(page))];
      if (palette === 'day') {
        found.push(...(await misfits(page)));
        if (isInFlight) found.push(...(await smallTargets(page)));
      }
      problems.push(...found.map((each) => `${name}, ${device}, ${palette}: ${each}`));
    }
  }
  await page.setViewportSize(TABLET);
  await page.emulateMedia({ colorScheme: 'light' });
  return problems;
}
