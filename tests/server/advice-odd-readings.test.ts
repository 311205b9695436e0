import { describe, expect, it } from 'vitest';
import { asked } from './examples.ts';
import { flown } from './flown.ts';
import type { Sent } from './flown.ts';
import { post, serve } from './serve.ts';

const { port } = await serve();

interface Answer {
  readonly phase: string;
  readonly howFar: { readonly toGoNm: number | null; readonly toGoS: number | null };
  readonly whichWay: { readonly headingDeg: number; readonly turnDeg: number };
  readonly estimate: { readonly wind: { readonly sdKt: number } | null };
  readonly alerts: readonly { readonly kind: string; readonly ask: string }[];
  readonly say: string;
  readonly why: string;
}

/** The answer to these readings, without a forecast, the ident confirmed. */
async function answerTo(readings: readonly Sent[], leg: object = asked.leg): Promise<Answer> {
  const { aircraft, dateIso } = asked;
  const body = { leg, aircraft, dateIso, readings, identConfirmed: true };
  const { status, json } = await post(port, '/api/advice', body);
  expect(status).toBe(200);
  return json as Answer;
}

const GOOD = flown({ minutes: 6 });
const [first, second, third, fourth] = GOOD as [Sent, Sent, Sent, Sent];

describe('POST /api/advice, given odd but possible readings', () => {
  it('sorts readings that come out of order', async () => {
    const shuffled = [3, 0, 6, 5, 1, 4, 2].flatMap((at) => GOOD[at] ?? []);
    expect(await answerTo(shuffled)).toEqual(await answerTo(GOOD));
  });

  it('counts a reading that is there twice once', async () => {
    expect(await answerTo([...GOOD, ...GOOD])).toEqual(await answerTo(GOOD));
  });

  it('starts again from a reading after an hour, says so, and is less sure of the wind', async () => {
    const later = { ...second, atMs: (GOOD.at(-1)?.atMs ?? 0) + 3_600_000 };
    const before = await answerTo(GOOD);
    const after = await answerTo([...GOOD, later]);
    expect(after.say).toMatch(/^No reading for one hour: I start again from this one\. /);
    expect(after.alerts).toEqual([]);
    // The place is that of the reading, 10 NM farther out than it would be by what went before.
    expect(after.howFar.toGoNm).toBeCloseTo(second.dmeNm, 0);
    // 6 kt in an hour are added to what was known.
    expect(after.estimate.wind?.sdKt ?? Infinity).toBeGreaterThan(
      (before.estimate.wind?.sdKt ?? 0) + 1,
    );
  });

  it('says nothing of a gap of ten minutes: it goes on from where it was', async () => {
    const later = flown({ minutes: 12 }).filter((_, minute) => minute <= 2 || minute === 12);
    expect((await answerTo(later)).say).not.toContain('No reading');
  });

  it('knows what the needle means with another course set, and has the OBS set back', async () => {
    const turned = flown({ minutes: 4, obs: { 4: 117 } });
    expect(turned[4]?.needleDots).not.toBe(0);
    const answer = await answerTo(turned);
    const plain = await answerTo(GOOD.slice(0, 5));
    expect(answer.say).toContain('Set course one one two again.');
    expect(answer.alerts).toEqual([]);
    expect(Math.abs(answer.whichWay.headingDeg - plain.whichWay.headingDeg)).toBeLessThanOrEqual(5);
  });

  it('takes headings that go through north for a small turn', async () => {
    const north = { ...asked.leg, courseDeg: 360 };
    const on = (headingDeg: number, each: Sent): Sent => ({
      ...each,
      headingDeg,
      courseSetDeg: 360,
    });
    const past = await answerTo([on(358, first), on(2, second), on(359, third)], north);
    const same = await answerTo([on(358, first), on(2, second), on(359, third)], {
      ...north,
      courseDeg: 0,
    });
    expect(past.whichWay.turnDeg).toBeLessThan(30);
    expect(past.alerts).toEqual([]);
    // North is 0 as well as 360.
    expect(same.whichWay).toEqual(past.whichWay);
    const whole = await answerTo([on(360, first), on(360, second)], north);
    expect(await answerTo([on(0, first), on(0, second)], north)).toEqual(whole);
  });

  it('works the slant range out anew for another altitude', async () => {
    // Pythagoras: 9,090 ft above the station are 1.50 NM, 4,090 ft 0.67 NM.
    const near = [{ ...first, dmeNm: 3 }];
    const low = await answerTo(near);
    const high = await answerTo(near, { ...asked.leg, altitudeFt: 9500 });
    expect(low.howFar.toGoNm).toBeCloseTo(Math.sqrt(9 - 0.67 ** 2), 0.8);
    expect(high.howFar.toGoNm).toBeCloseTo(Math.sqrt(9 - 1.5 ** 2), 0.8);
  });

  it('asks for flag and course where the flag contradicts the place, and tells nothing by it', async () => {
    const { alerts, say, why, howFar } = await answerTo([
      ...GOOD.slice(0, 4),
      { ...fourth, atMs: 4 * 60_000, dmeNm: GOOD[4]?.dmeNm ?? 0, flag: 'from' },
    ]);
    expect(alerts.map((each) => each.kind)).toEqual(['reverse-sensing']);
    expect(say).toMatch(/^The flag does not fit where you should be: read the flag and the course/);
    expect(howFar.toGoS).toBeNull();
    expect(why).not.toContain('you are on the radial');
  });

  it('asks again where two readings of one moment contradict each other', async () => {
    const other = { ...fourth, dmeNm: fourth.dmeNm + 5 };
    const { alerts, say } = await answerTo([...GOOD.slice(0, 4), other]);
    expect(alerts.map((each) => each.kind)).toEqual(['readings-disagree']);
    expect(say).toMatch(/^I understood distance two two decimal \w+\. It does not fit/);
  });

  it('asks for the best thing to read once nothing fits any more, and says that it is lost', async () => {
    const elsewhere = [4, 5, 6].map((minute): Sent => ({
      ...first,
      atMs: minute * 60_000,
      dmeNm: [60, 12, 95][minute - 4] ?? 0,
      needleDots: [4, -4, 4][minute - 4] ?? 0,
    }));
    const answers = await Promise.all(
      [1, 2, 3].map((count) => answerTo([...GOOD.slice(0, 4), ...elsewhere.slice(0, count)])),
    );
    const lost = answers.find((each) => each.phase === 'lost');
    expect(lost?.say).toMatch(
      /I have lost the picture\. Hold heading .* Centre the needle with FROM and read the O B S\./,
    );
    expect(lost?.howFar.toGoNm).toBeNull();
  });
});
