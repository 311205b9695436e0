import { describe, expect, it } from 'vitest';
import { asked, leg } from './examples.ts';
import { post, serve } from './serve.ts';

const { port } = await serve();
const ask = (body: unknown) => post(port, '/api/advice', body);

const station = leg.station;
const arcLeg = {
  station,
  direction: 'to',
  courseDeg: 145,
  altitudeFt: 4500,
  arc: { dmeNm: 12, toRadialDeg: 40, turn: 'clockwise' },
};
const at = (atS: number, headingDeg: number, dmeNm: number, needle: object) => ({
  atMs: atS * 1000,
  headingDeg,
  courseSetDeg: 145,
  flag: 'to',
  dmeNm,
  ...needle,
});
const readings = [
  at(0, 152, 14.2, { needleDots: 0 }),
  at(60, 152, 12.6, { needleDots: 0 }),
  at(120, 60, 12, { needleDots: 4 }),
  at(180, 70, 12.4, { courseSetDeg: 341, needleDots: 0, flag: 'from' }),
];

interface Answer {
  readonly phase: string;
  readonly howFar: { readonly toGoNm: number };
  readonly estimate: { readonly crossTrackNm: number };
  readonly alerts: readonly unknown[];
  readonly say: string;
}

describe('POST /api/advice for an arc', () => {
  it('answers with the way along it to its radial, outside being left of track clockwise', async () => {
    const { status, json } = await ask({ ...asked, leg: arcLeg, readings });
    expect(status).toBe(200);
    const answer = json as Answer;
    expect(answer.phase).toBe('track');
    expect(answer.alerts).toEqual([]);
    // From the 341 to the 040 radial are 59 degrees: 12.3 NM at 11.98 NM over the ground.
    expect(Math.abs(answer.howFar.toGoNm - 12.3)).toBeLessThan(0.5);
    expect(answer.estimate.crossTrackNm).toBeLessThan(-0.1);
    expect(answer.say).toContain('Zero four zero radial in ');
  });

  it('before the turn tells the distance to it and the turn with its time', async () => {
    const { json } = await ask({ ...asked, leg: arcLeg, readings: readings.slice(0, 2) });
    expect((json as Answer).phase).toBe('intercept');
    expect((json as Answer).howFar.toGoNm).toBeLessThan(0.5);
    expect((json as Answer).say).toMatch(
      /[Jj]oin the one two mile arc\. Turn left, heading zero \w+ \w+\./,
    );
  });

  it.each([
    [{ arc: { ...arcLeg.arc, dmeNm: 0.6 } }, 'leg.arc.dmeNm'],
    [{ arc: { ...arcLeg.arc, toRadialDeg: 400 } }, 'leg.arc.toRadialDeg'],
    [{ arc: { ...arcLeg.arc, turn: 'left' } }, 'leg.arc.turn'],
    [{ arc: { dmeNm: 12, toRadialDeg: 40 } }, 'leg.arc.turn'],
    [{ arc: { ...arcLeg.arc, lead: 1 } }, 'leg.arc.lead'],
    [{ endDmeNm: 8 }, 'leg.endDmeNm'],
  ])('refuses %j by the name of the field', async (change, field) => {
    const { status, json } = await ask({ ...asked, leg: { ...arcLeg, ...change }, readings: [] });
    expect(status).toBe(422);
    expect((json as { errors: { field: string }[] }).errors.map((each) => each.field)).toEqual([
      field,
    ]);
  });

  it('refuses an arc about a station without DME', async () => {
    const without = { ...arcLeg, station: { ...station, hasDme: false } };
    const { status, json } = await ask({ ...asked, leg: without, readings: [] });
    expect(status).toBe(422);
    expect(json).toMatchObject({ errors: [{ field: 'leg.arc.dmeNm' }] });
  });
});
