import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { takeOff } from './air.ts';
import { QEV } from './demo.ts';
import { flyWords, inSheet, legForm, openSheet, pageWords } from './page-words.ts';
import { flyStretch, giveByTapping, spokenSoFar, typeStation } from './pilot.ts';
import { NOON_MS, TABLET, setStage } from './stage.ts';

const stage = setStage();

const ARC_DME = 12;
const JOIN_DEG = 145;
const TO_RADIAL = 40;
const INBOUND_DEG = 220;

/** An arc of 12 DME clockwise to the 040 radial, joined inbound; then inbound on that radial. */
async function typeArc(page: Page): Promise<void> {
  const form = await typeStation(page);
  await form.choice('DME arc').check();
  await form.field('Course on the OBS').fill(String(JOIN_DEG));
  await form.field('DME on the arc').fill(String(ARC_DME));
  await form.field('To the radial').fill(String(TO_RADIAL).padStart(3, '0'));
}

/** What the page may be asking: to centre the needle with FROM and read the OBS. */
async function isRadialAsked(page: Page): Promise<boolean> {
  const words = flyWords(page);
  const texts = [...(await words.said.allTextContents()), ...(await words.turn.allTextContents())];
  return texts.join(' ').includes('Centre the needle with FROM');
}

describe('an arc typed in', () => {
  test('is refused by its own fields, in words', async () => {
    const page = await stage.open({ at: '#/plan' });
    await typeArc(page);
    const form = legForm(page);
    await form.field('DME on the arc').fill('0.5');
    await form.field('To the radial').fill('325');
    await pageWords(page).readyToFly.click();
    await page.getByText('at least 0.7 NM').waitFor();
    await page.getByText('a radial other than the one on which the arc is joined').waitFor();
    await form.choice('No').check();
    await pageWords(page).readyToFly.click();
    await page.getByText('a station with a DME: an arc is flown by its distance').waitFor();
  });

  test('flown on the answers it keeps its distance and ends on the radial of the next leg', async () => {
    const page = await stage.open({ at: '#/plan' });
    const words = flyWords(page);
    await typeArc(page);
    await pageWords(page).addALeg.click();
    // After an arc comes the radial where it ends, inbound.
    expect(await legForm(page, 1).field('Course on the OBS').inputValue()).toBe('220');
    await pageWords(page).readyToFly.click();
    await words.checklist.waitFor();
    expect(await words.legLine.textContent()).toContain('arc 12 DME to the 040 radial');
    await words.identState.click();
    await inSheet(page, 'Ident confirmed').click();
    await openSheet(page).waitFor({ state: 'detached' });

    const air = takeOff({
      beacon: QEV,
      radialDeg: JOIN_DEG + 180,
      groundNm: 15,
      altitudeFt: 4500,
      headingDeg: 150,
      trueAirspeedKt: 95,
      windFromDegTrue: 250,
      windKt: 20,
      dateIso: '2026-11-25',
      startMs: NOON_MS,
    });
    const radialNow = (): number => air.offCourseDeg(0, 'from');
    const begin = page.getByRole('button', { name: 'Begin leg 2: to QEV on 220' });
    const radialsRead: number[] = [];
    let obsDeg = JOIN_DEG;
    const offNm: number[] = [];
    await flyStretch({
      page,
      air,
      give: async (onto, panel) => {
        if (!(await isRadialAsked(onto))) {
          await giveByTapping(onto, panel);
          return;
        }
        obsDeg = ((Math.round(radialNow()) % 360) + 360) % 360;
        radialsRead.push(obsDeg);
        await giveByTapping(onto, air.panel(obsDeg));
      },
      courseDeg: () => obsDeg,
      isOver: async () => {
        // From some way round the arc on.
        if (radialNow() > -20 && radialNow() < TO_RADIAL) {
          offNm.push(Math.hypot(air.groundNm(), 4090 / 6076.1155) - ARC_DME);
        }
        return (await words.said.allTextContents()).join(' ').includes('Lead radial.');
      },
    });
    expect(radialsRead.length).toBeGreaterThan(0);
    expect(offNm.length).toBeGreaterThan(60);
    expect(Math.max(...offNm.map(Math.abs))).toBeLessThan(0.5);
    // Half a percent of 90 to 115 kt is half a mile: two to three radials at 12 DME, and the step of the test.
    expect(TO_RADIAL - radialNow()).toBeGreaterThan(1);
    expect(TO_RADIAL - radialNow()).toBeLessThan(4.5);

    // With the next leg to begin under the answer the foot of the page is still in sight.
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(
      TABLET.height,
    );
    await begin.click();
    await words.legLine.filter({ hasText: 'Leg 2 of 2' }).waitFor();
    const inbound = await flyStretch({
      page,
      air,
      give: giveByTapping,
      courseDeg: () => INBOUND_DEG,
      isOver: () => air.groundNm() < 6,
    });
    for (const { offCourseDots } of inbound.slice(-2))
      expect(Math.abs(offCourseDots)).toBeLessThan(1);

    const said = (await spokenSoFar(page)).join('\n');
    expect(said).toMatch(/Join the one two mile arc\. Turn left, heading zero \w+ \w+\./);
    expect(said).toMatch(/Zero four zero radial in /);
    expect(said).toMatch(/Zero four zero radial in two miles\. Set course two two zero\./);
    expect(said).toMatch(/Lead radial\. Turn right, inbound, heading two \w+ \w+\./);
    expect(said).not.toContain('reverse');
  });
});
