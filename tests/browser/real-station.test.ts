import { describe, expect, test } from 'vitest';
import { takeOff } from './air.ts';
import { stationOffTheModel } from './navaid.ts';
import { flyWords, inSheet, legForm, openSheet, pageWords } from './page-words.ts';
import { flyStretch, giveByTapping } from './pilot.ts';
import { NOON_MS, setStage } from './stage.ts';

const stage = setStage();

const DATE = '2026-11-25';
const COURSE_DEG = 240;
const ALTITUDE_FT = 5500;
const WIND = { windFromDegTrue: 310, windKt: 20 };

const withLetter = (angleDeg: number, plus: string, minus: string): string =>
  `${Math.abs(angleDeg).toFixed(5)} ${angleDeg < 0 ? minus : plus}`;

const turn = (angleDeg: number): number => angleDeg - 360 * Math.round(angleDeg / 360);

describe('a leg to a real station whose radials are 4 to 6 degrees off today’s variation', () => {
  test('typed in with its declination and flown on the answers, it ends over the station', async () => {
    const station = stationOffTheModel(DATE);
    const page = await stage.open({ at: '#/plan' });
    const form = legForm(page);
    await form.field('Station ident').fill(station.ident);
    await form.field('Frequency').fill(station.frequencyMhz.toFixed(2));
    await form.field('Latitude').fill(withLetter(station.latitudeDeg, 'N', 'S'));
    await form.field('Longitude').fill(withLetter(station.longitudeDeg, 'E', 'W'));
    await form.field('Elevation').fill(String(station.elevationFt));
    await form.field('Station declination').fill(withLetter(station.declinationDegEast, 'E', 'W'));
    await form.field('Course on the OBS').fill(String(COURSE_DEG));
    await form.field('Altitude').fill(String(ALTITUDE_FT));
    await pageWords(page).readyToFly.click();

    const words = flyWords(page);
    await words.checklist.waitFor();
    expect(await words.ident.textContent()).toBe(station.ident);
    // Without wind the heading is the course, from the station's zero radial over true north to magnetic.
    const stillAirDeg = COURSE_DEG + station.declinationDegEast - station.variationDegEast;
    const item = (await words.checklist.getByText(/^Heading \d{3}$/).textContent()) ?? '';
    expect(Math.abs(turn(Number(item.slice(-3)) - stillAirDeg))).toBeLessThan(1.2);
    await words.identState.click();
    await inSheet(page, 'Ident confirmed').click();
    await openSheet(page).waitFor({ state: 'detached' });

    const air = takeOff({
      beacon: station,
      ...WIND,
      radialDeg: COURSE_DEG + 180 - 6,
      groundNm: 14,
      altitudeFt: ALTITUDE_FT,
      headingDeg: COURSE_DEG,
      trueAirspeedKt: 95,
      dateIso: DATE,
      startMs: NOON_MS,
    });
    let nearestNm = Infinity;
    let held = NaN;
    const given = await flyStretch({
      page,
      air,
      give: giveByTapping,
      courseDeg: () => COURSE_DEG,
      isOver: () => {
        const groundNm = air.groundNm();
        const isReceding = groundNm > nearestNm && nearestNm < 1;
        if (groundNm > 2 && groundNm < 4) held = air.panel(COURSE_DEG).headingDeg;
        nearestNm = Math.min(nearestNm, groundNm);
        return isReceding;
      },
    });
    const inbound = given.filter(({ panel }) => panel.flag === 'TO');
    for (const { offCourseDots } of inbound.slice(-4))
      expect(Math.abs(offCourseDots)).toBeLessThan(1);
    expect(nearestNm).toBeLessThan(0.25);
    // The heading that holds this course in this wind, by the wind triangle: the wind is known here.
    const courseTrue = COURSE_DEG + station.declinationDegEast;
    const across = Math.sin(((WIND.windFromDegTrue - courseTrue) * Math.PI) / 180);
    const correction = (Math.asin((WIND.windKt * across) / 95) * 180) / Math.PI;
    expect(Math.abs(turn(held + air.variationDeg() - courseTrue - correction))).toBeLessThan(8);
  });
});
