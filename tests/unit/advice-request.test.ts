import { describe, expect, it } from 'vitest';
import { advise } from '../../src/procedure/advise.ts';
import type { AdviceRequest } from '../../src/procedure/advise.ts';
import type { Advice } from '../../src/procedure/advice.ts';
import { AIRCRAFT, DATE_ISO, INBOUND, OUTBOUND } from './ocean-legs.ts';

const REQUEST: AdviceRequest = {
  leg: { ...INBOUND, endDmeNm: 0 },
  aircraft: AIRCRAFT,
  forecastWind: { fromDegTrue: 330, speedKt: 15 },
  dateIso: DATE_ISO,
  readings: [
    { atMs: 0, headingDeg: 112, courseSetDeg: 112, needleDots: -1.5, flag: 'to', dmeNm: 11.2 },
  ],
};

function answer(changes: Partial<AdviceRequest> = {}): Advice {
  const result = advise({ ...REQUEST, ...changes });
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

function fields(changes: Partial<AdviceRequest>): readonly string[] {
  const result = advise({ ...REQUEST, ...changes });
  return result.ok ? [] : result.problem.map((problem) => problem.field);
}

describe('advice from a request alone', () => {
  it('turns towards the needle and tells distance, time and speed', () => {
    const advice = answer();
    expect(advice.whichWay.turn).toBe('left');
    // Slant 11.2 NM at 4,090 ft above the station is 11.18 NM over ground.
    expect(Math.abs((advice.howFar.toGoNm ?? 0) - 11.18)).toBeLessThan(0.2);
    expect(advice.say).toMatch(/^Turn left [a-z ]+ degrees, heading (zero|one) /);
    expect(advice.say).toContain('miles to go');
    expect(advice.why).toMatch(/^One and a half dots left is/);
  });

  it('is the same for the same request', () => {
    expect(answer()).toEqual(answer());
  });

  it('judges the ident only when it is told about it', () => {
    expect(answer().alerts.map((alert) => alert.kind)).not.toContain('ident-not-confirmed');
    expect(answer({ identConfirmed: null }).say).not.toContain('Ident');
    expect(answer({ identConfirmed: true }).say).not.toContain('Ident');
    const open = answer({ identConfirmed: false });
    expect(open.alerts.map((alert) => alert.kind)).toContain('ident-not-confirmed');
    expect(open.say).toMatch(/Ident not confirmed\.$/);
  });

  it('without a reading gives a heading along the course and asks for the reading needed most', () => {
    const advice = answer({ readings: [] });
    expect(advice.howFar.toGoNm).toBeNull();
    expect(advice.estimate.wind).toBeNull();
    expect(advice.say).toMatch(
      /No reading yet\. Centre the needle with FROM and read the O B S\.$/,
    );
  });

  it('names what a leg without DME cannot tell', () => {
    const station = { ...INBOUND.station, hasDme: false };
    const [reading] = REQUEST.readings;
    const { headingDeg, courseSetDeg, needleDots, flag, atMs } = reading ?? { atMs: 0 };
    const blind = {
      atMs,
      headingDeg,
      courseSetDeg,
      needleDots,
      flag,
    } as AdviceRequest['readings'][0];
    const advice = answer({ leg: { ...INBOUND, station }, readings: [blind] });
    expect(advice.howFar.toGoNm).toBeNull();
    expect(advice.say).toContain('I cannot tell the distance yet.');
  });

  it('says point when asked to', () => {
    expect(answer({ manner: { decimalWord: 'point' } }).say).toMatch(/point [a-z]+ miles to go/);
  });

  it('never lets out a number that is none', () => {
    for (const request of [{}, { readings: [] }, { leg: OUTBOUND }]) {
      expect(JSON.stringify(answer(request))).not.toContain('NaN');
      expect(answer(request).say).not.toMatch(/[0-9]|NaN|undefined|null/);
    }
  });
});

describe('bad input names its field', () => {
  const reading = { atMs: 0, courseSetDeg: 112, flag: 'to' } as const;

  it.each([
    ['leg.courseDeg', { leg: { ...INBOUND, courseDeg: 400 } }],
    ['leg.altitudeFt', { leg: { ...INBOUND, altitudeFt: NaN } }],
    ['aircraft.trueAirspeedKt', { aircraft: { ...AIRCRAFT, trueAirspeedKt: -95 } }],
    ['aircraft.dotsFullScale', { aircraft: { ...AIRCRAFT, dotsFullScale: 0 } }],
    ['forecastWind.speedKt', { forecastWind: { fromDegTrue: 330, speedKt: -1 } }],
    ['forecastWind.fromDegTrue', { forecastWind: { fromDegTrue: NaN, speedKt: 10 } }],
    ['dateIso', { dateIso: '1999-07-01' }],
    ['readings.0.needleDots', { readings: [{ ...reading, needleDots: 7 }] }],
    ['readings.1.dmeNm', { readings: [reading, { ...reading, atMs: 60_000, dmeNm: -1 }] }],
    ['readings.0.headingDeg', { readings: [{ ...reading, headingDeg: 361 }] }],
  ] as const)('%s', (field, changes: Partial<AdviceRequest>) => {
    expect(fields(changes)).toContain(field);
  });

  it('tells all problems at once', () => {
    const both = fields({
      leg: { ...INBOUND, courseDeg: 400 },
      readings: [{ ...reading, needleDots: 7 }],
    });
    expect(both).toEqual(expect.arrayContaining(['leg.courseDeg', 'readings.0.needleDots']));
  });
});
