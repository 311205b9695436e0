import { describe, expect, it } from 'vitest';
import { asked, leg, reading } from './examples.ts';
import { post, serve } from './serve.ts';

const { port } = await serve();
const ask = (body: unknown) => post(port, '/api/advice', body);

describe('POST /api/advice', () => {
  it('answers a reading with the words and the numbers of the interface', async () => {
    const { status, json } = await ask(asked);
    expect(status).toBe(200);
    expect(json).toMatchObject({
      phase: expect.any(String) as string,
      howFar: { toGoNm: expect.any(Number) as number },
      whichWay: { turn: 'left', headingDeg: expect.any(Number) as number },
      estimate: { crossTrackNm: expect.any(Number) as number },
      say: expect.stringMatching(/^Turn left/) as string,
      why: expect.any(String) as string,
    });
  });

  it('takes out the height from the DME distance (slant range by Pythagoras: 4,090 ft is 0.67 NM)', async () => {
    const { json } = await ask({ ...asked, readings: [{ ...reading, dmeNm: 1.5, needleDots: 0 }] });
    const { howFar } = json as { howFar: { toGoNm: number } };
    expect(howFar.toGoNm).toBeGreaterThan(1.1);
    expect(howFar.toGoNm).toBeLessThan(1.5);
  });

  it('gives the same answer to the same question', async () => {
    expect((await ask(asked)).text).toBe((await ask(asked)).text);
  });

  it('answers without wind, without day and without any reading', async () => {
    const { status, json } = await ask({ leg, aircraft: asked.aircraft, readings: [] });
    expect(status).toBe(200);
    expect(json).toMatchObject({ say: expect.any(String) as string });
  });

  it('takes two degrees a dot and five dots to each side where no scale is given', async () => {
    const bare = { ...asked, aircraft: { trueAirspeedKt: asked.aircraft.trueAirspeedKt } };
    const { status, text } = await ask(bare);
    expect(status).toBe(200);
    expect(text).toBe((await ask(asked)).text);
    const coarse = { ...bare, aircraft: { ...bare.aircraft, degreesPerDot: 4 } };
    expect((await ask(coarse)).text).not.toBe(text);
  });

  it('takes today where no day is given', async () => {
    const without = { ...asked, dateIso: undefined };
    expect((await ask(without)).text).toBe((await ask(asked)).text);
  });

  it('says that the ident is not confirmed until it is', async () => {
    const kinds = async (identConfirmed: boolean): Promise<string[]> => {
      const { json } = await ask({ ...asked, identConfirmed });
      return (json as { alerts: { kind: string }[] }).alerts.map(({ kind }) => kind);
    };
    expect(await kinds(false)).toContain('ident-not-confirmed');
    expect(await kinds(true)).not.toContain('ident-not-confirmed');
  });

  it('accepts a DME distance that rises inbound, and answers', async () => {
    const rising = [0, 1, 2, 3].map((minute) => ({
      ...reading,
      atMs: minute * 60_000,
      needleDots: 0,
      dmeNm: 11 + 1.5 * minute,
    }));
    const { status, json } = await ask({ ...asked, readings: rising });
    expect(status).toBe(200);
    expect((json as { alerts: unknown[] }).alerts.length).toBeGreaterThan(0);
  });

  it('takes a cross-bearing to another station', async () => {
    const other = { ...leg.station, ident: 'qwx', latitudeDeg: 46.2 };
    const crossed = [reading, { ...reading, atMs: 60_000, station: other }];
    expect((await ask({ ...asked, readings: crossed })).status).toBe(200);
  });
});
