import { describe, expect, test } from 'vitest';
import { takeOff } from './air.ts';
import { DEMO_START, END_DME_NM, INBOUND_DEG, OUTBOUND_DEG } from './demo.ts';
import { SAID, flyWords } from './page-words.ts';
import {
  flyStretch,
  giveByTapping,
  giveByTyping,
  spokenSoFar,
  startDemo,
  walkChecklist,
  walkChecklistByTyping,
} from './pilot.ts';
import { setStage } from './stage.ts';

const stage = setStage();

/** A steady pilot and an honest panel in half dots: more than a dot would be the answer’s fault. */
const MOST_DOTS = 1;
/** The panel is read in tenths and the page may round a tenth. */
const MOST_MISS_NM = 0.3;
/** The wind is seen through half dots and tenths of a mile. */
const MOST_WIND_MISS = { deg: 25, kt: 6 };

/** A mile is called, or an answer that has just told it stands for the call. */
const told = (call: string, miles: string): RegExp =>
  new RegExp(`${call.replaceAll('.', '\\.')}|${miles} (zero|one|two|three) miles to go`);

const turn = (angleDeg: number): number => Math.abs(angleDeg - 360 * Math.round(angleDeg / 360));

describe.each([
  { how: 'by tapping', give: giveByTapping, walk: walkChecklist },
  { how: 'by typed sentences only', give: giveByTyping, walk: walkChecklistByTyping },
])('the demo flown $how, in a wind that nobody told the page about', ({ give, walk }) => {
  test('it comes onto the radial, passes the station, and ends where the DME says', async () => {
    const page = await stage.open();
    const words = flyWords(page);
    await startDemo(page);
    await walk(page);
    const air = takeOff(DEMO_START);

    const inbound = await flyStretch({
      page,
      air,
      give,
      courseDeg: () => INBOUND_DEG,
      isOver: async () => (await words.legLine.textContent())?.startsWith('Leg 2') === true,
    });
    const beforeCone = inbound.filter(({ panel }) => panel.flag === 'TO');
    expect(beforeCone.length).toBeGreaterThan(5);
    for (const { offCourseDots } of beforeCone.slice(-4))
      expect(Math.abs(offCourseDots)).toBeLessThan(MOST_DOTS);
    for (const each of beforeCone.slice(1))
      expect(Math.abs(each.toGoNm - each.groundNm)).toBeLessThan(MOST_MISS_NM);
    expect(inbound.at(-1)?.panel.flag).toBe('FROM');
    expect(inbound.at(-1)?.said).toMatch(
      /^Station passage\. .*Set course zero six eight\. Turn left/,
    );

    const outbound = await flyStretch({
      page,
      air,
      give,
      courseDeg: () => OUTBOUND_DEG,
      isOver: () => air.panel(OUTBOUND_DEG).dmeNm >= END_DME_NM + 0.1,
    });
    const endGroundNm = Math.sqrt(END_DME_NM ** 2 - air.dmeAtNm(0) ** 2);
    for (const { offCourseDots } of outbound.slice(-2))
      expect(Math.abs(offCourseDots)).toBeLessThan(MOST_DOTS);
    for (const each of outbound.slice(2))
      expect(Math.abs(each.toGoNm - (endGroundNm - each.groundNm))).toBeLessThan(MOST_MISS_NM);

    const [, from = NaN, speed = NaN] =
      /^(\d{3})\/(\d\d)/.exec((await words.wind.textContent()) ?? '')?.map(Number) ?? [];
    const windFromMag = DEMO_START.windFromDegTrue - air.variationDeg();
    expect(turn(from - windFromMag)).toBeLessThan(MOST_WIND_MISS.deg);
    expect(Math.abs(speed - DEMO_START.windKt)).toBeLessThan(MOST_WIND_MISS.kt);

    const said = (await spokenSoFar(page)).join('\n');
    expect(said).toMatch(SAID.nearStation);
    // Slant range at 2 and 1 NM before the end, by Pythagoras: 12.0 and 13.0 at this height.
    expect(air.dmeAtNm(endGroundNm - 2).toFixed(1)).toBe('12.0');
    expect(said).toMatch(told('Two miles to go. D M E one two decimal zero.', 'Two decimal'));
    expect(air.dmeAtNm(endGroundNm - 1).toFixed(1)).toBe('13.0');
    expect(said).toMatch(told('One mile to go. D M E one three decimal zero.', 'One decimal'));
    // By the clock, or by the answer to a reading that was given right there.
    expect(said).toMatch(/Destination now\. D M E one four decimal zero|You are there\./);
  });
});
