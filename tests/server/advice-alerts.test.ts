import { describe, expect, it } from 'vitest';
import { asked } from './examples.ts';
import { flown, flownOnAnswers } from './flown.ts';
import type { Sent } from './flown.ts';
import { post, serve } from './serve.ts';

const { port } = await serve();

interface Alert {
  readonly kind: string;
  readonly ask: string;
}

interface Answer {
  readonly alerts: readonly Alert[];
  readonly whichWay: { readonly headingDeg: number };
}

/** The answer to these readings, without a forecast; the ident is confirmed unless said otherwise. */
async function answerTo(readings: readonly Sent[], identConfirmed = true): Promise<Answer> {
  const { leg, aircraft, dateIso } = asked;
  const body = { leg, aircraft, dateIso, readings, identConfirmed };
  const { json } = await post(port, '/api/advice', body);
  return json as Answer;
}

async function alertsAfter(
  readings: readonly Sent[],
  identConfirmed = true,
): Promise<readonly Alert[]> {
  return (await answerTo(readings, identConfirmed)).alerts;
}

/** The same readings, spoiled from one minute to another (both included). */
function spoiled(
  readings: readonly Sent[],
  from: number,
  to: number,
  spoil: (reading: Sent, minute: number) => Sent,
): Sent[] {
  return readings.map((each, minute) =>
    minute < from || minute > to ? each : spoil(each, minute),
  );
}

const GOOD = flown({ minutes: 12 });

const moved = (reading: Sent, byNm: number): Sent => ({
  ...reading,
  dmeNm: Math.round((reading.dmeNm + byNm) * 10) / 10,
});

interface Case {
  readonly kind: string;
  readonly what: string;
  readonly readings: readonly Sent[];
  /** The minute of the reading after which it is told, and of that after which it is not told any more. */
  readonly toldAt: number;
  readonly goneAt: number;
  readonly check: RegExp;
}

const CASES: readonly Case[] = [
  {
    kind: 'readings-disagree',
    what: 'one mistyped distance',
    readings: spoiled(GOOD, 4, 4, (each) => moved(each, 6)),
    toldAt: 4,
    goneAt: 5,
    check: /^I understood distance 21\.\d\. It does not fit: please read again\.$/,
  },
  {
    kind: 'dme-not-moving',
    what: 'a DME that stands still for four minutes',
    readings: spoiled(GOOD, 4, 7, (each) => ({ ...each, dmeNm: GOOD[3]?.dmeNm ?? 0 })),
    toldAt: 5,
    goneAt: 8,
    check: /^Watch the DME for a minute: does the distance change\?/,
  },
  {
    kind: 'dme-disagrees',
    what: 'a DME on another frequency for three minutes',
    readings: spoiled(GOOD, 4, 6, (each) => moved(each, 8)),
    toldAt: 5,
    goneAt: 8,
    check: /^Check the frequency that the DME is tuned to and listen to its ident\.$/,
  },
  {
    kind: 'wrong-station',
    what: 'needle and distance of another station',
    readings: spoiled(GOOD, 4, 12, (each, minute) => ({
      ...each,
      dmeNm: 41 + 1.1 * (minute - 4),
      needleDots: -4 + 0.5 * (minute - 4),
    })),
    toldAt: 6,
    goneAt: 12,
    check: /^Check the frequency and listen to the ident\.$/,
  },
  {
    kind: 'needle-not-moving',
    what: 'a needle at rest in a cross-wind, then alive',
    readings: spoiled(
      flown({ minutes: 8, windKt: 12, headingDeg: 103, obs: { 3: 109, 4: 102 } }),
      0,
      3,
      (each) => ({ ...each, needleDots: 0 }),
    ),
    toldAt: 3,
    goneAt: 5,
    check: /^Turn the OBS ten degrees and see the needle move\.$/,
  },
  {
    kind: 'reverse-sensing',
    what: 'the OBS set to the reciprocal',
    readings: spoiled(GOOD, 4, 4, (each) => ({
      ...each,
      courseSetDeg: 292,
      flag: 'from',
      needleDots: 1.5,
    })),
    toldAt: 4,
    goneAt: 5,
    check: /^The OBS is set to the reciprocal: .* Set the course of the leg\.$/,
  },
  {
    kind: 'flag-off',
    what: 'OFF far from the station',
    readings: spoiled(GOOD, 4, 5, ({ atMs, headingDeg, courseSetDeg, dmeNm }) => ({
      ...{ atMs, headingDeg, courseSetDeg, dmeNm },
      flag: 'off',
    })),
    toldAt: 4,
    goneAt: 6,
    check: /do not use the needle\. Check frequency, ident and altitude\.$/,
  },
  {
    kind: 'outside-reception',
    what: 'a station below the horizon',
    readings: flown({ groundNm: 117, minutes: 4 }),
    toldAt: 0,
    goneAt: 4,
    check: /^You may be beyond reception\. Check the ident, and climb if you can\.$/,
  },
];

describe('POST /api/advice', () => {
  it('has nothing to object to in good readings', async () => {
    for (let count = 1; count <= GOOD.length; count += 1) {
      expect(await alertsAfter(GOOD.slice(0, count))).toEqual([]);
    }
  });

  it.each(CASES)(
    'tells $what as $kind, with the one check, and stops when that has cleared it',
    async ({ kind, readings, toldAt, goneAt, check }) => {
      const told = await alertsAfter(readings.slice(0, toldAt + 1));
      const asks = told.filter((each) => each.kind === kind).map((each) => each.ask);
      expect(told.map((each) => each.kind)).toContain(kind);
      expect(asks).toHaveLength(1);
      expect(asks[0]).toMatch(check);
      const left = await alertsAfter(readings.slice(0, goneAt + 1));
      expect(left.map((each) => each.kind)).not.toContain(kind);
    },
  );

  it('tells a direction indicator that has jumped by 25 degrees, within five minutes', async () => {
    const told: (readonly Alert[])[] = [];
    const ask = async (readings: readonly Sent[]): Promise<number> => {
      const answer = await answerTo(readings);
      told.push(answer.alerts);
      return answer.whichWay.headingDeg;
    };
    await flownOnAnswers(ask, { byDeg: 25, from: 6, until: 14 }, 11);
    expect(told.slice(0, 6).flat()).toEqual([]);
    expect(told.slice(6).flat()).toContainEqual({
      kind: 'heading-indicator-disagrees',
      ask: 'Fly level and compare the direction indicator with the compass.',
    });
  });

  it('tells no direction indicator from the second reading after it was set again', async () => {
    const flownUntil = async (until: number, minutes: number): Promise<boolean[]> => {
      const told: boolean[] = [];
      const ask = async (readings: readonly Sent[]): Promise<number> => {
        const answer = await answerTo(readings);
        told.push(answer.alerts.some(({ kind }) => kind === 'heading-indicator-disagrees'));
        return answer.whichWay.headingDeg;
      };
      await flownOnAnswers(ask, { byDeg: 25, from: 6, until }, minutes);
      return told;
    };
    const first = (await flownUntil(14, 11)).indexOf(true);
    const told = await flownUntil(first + 1, 20);
    expect(told[first]).toBe(true);
    expect(told.slice(first + 2)).not.toContain(true);
  });

  it('tells an ident that nobody has heard until it is confirmed', async () => {
    const [unheard] = await alertsAfter(GOOD.slice(0, 3), false);
    expect(unheard).toEqual({
      kind: 'ident-not-confirmed',
      ask: 'Listen to the Morse and confirm the ident.',
    });
    expect(await alertsAfter(GOOD.slice(0, 3), true)).toEqual([]);
  });
});
