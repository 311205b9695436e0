import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/wire/problem.ts';
import { asked, idOf, leg, note, reading } from './examples.ts';
import { get, post, serve } from './serve.ts';

const { port } = await serve();

async function refused(at: string, body: unknown): Promise<Problem> {
  const answer = await post(port, at, body);
  expect(answer.status).toBe(422);
  return answer.json as Problem;
}

const fieldsOf = ({ errors }: Problem): string[] => errors.map(({ field }) => field).sort();

describe('a refusal names everything that is wrong, in one round', () => {
  it('what is of another type and what is out of range', async () => {
    const problem = await refused('/api/advice', {
      ...asked,
      leg: {
        ...leg,
        courseDeg: 400,
        altitudeFt: 'high',
        station: { ...leg.station, colour: 'red' },
      },
      aircraft: { ...asked.aircraft, trueAirspeedKt: -95 },
      forecastWind: { fromDegTrue: 330, speedKt: 900 },
      readings: [
        { ...reading, headingDeg: 361, flag: 'maybe' },
        { ...reading, atMs: 60_000, dmeNm: -1 },
      ],
    });
    expect(fieldsOf(problem)).toEqual([
      'aircraft.trueAirspeedKt',
      'forecastWind.speedKt',
      'leg.altitudeFt',
      'leg.courseDeg',
      'leg.station.colour',
      'readings.0.flag',
      'readings.0.headingDeg',
      'readings.1.dmeNm',
    ]);
  });

  it('a station that is missing once, not each of its figures', async () => {
    const problem = await refused('/api/advice', {
      ...asked,
      leg: { ...leg, station: undefined, courseDeg: 400 },
    });
    expect(fieldsOf(problem)).toEqual(['leg.courseDeg', 'leg.station']);
  });

  it('in events as well, and nothing is recorded', async () => {
    const created = await post(port, '/api/flights', { name: 'all at once' });
    const { id } = created.json as { id: string };
    const problem = await refused(`/api/flights/${id}/events`, {
      events: [
        { ...note(1), kind: 'reading', text: 7, headingDeg: 361 },
        { ...note(2), kind: 'song' },
        { id: idOf(3), atMs: 5, kind: 'reading', dmeNm: 201 },
      ],
    });
    expect(fieldsOf(problem)).toEqual([
      'events.0.headingDeg',
      'events.0.text',
      'events.1.kind',
      'events.2.dmeNm',
    ]);
    expect((await get(port, `/api/flights/${id}/events`)).json).toEqual({ events: [] });
  });
});

describe('a refusal is in plain words', () => {
  it.each(['{"leg": ', 'heading 112', ''])('a body that is no JSON: %j', async (body) => {
    const answer = await post(port, '/api/advice', body);
    expect(answer.status).toBe(400);
    const { detail, errors } = answer.json as Problem;
    expect(errors).toMatchObject([{ field: 'body', expected: 'JSON' }]);
    expect(detail).toMatch(/JSON/);
    expect(detail).not.toMatch(/token|position|content-type|parse/i);
  });

  it('an ident of no letters is "nothing"', async () => {
    const station = { ...leg.station, ident: '' };
    const problem = await refused('/api/advice', { ...asked, leg: { ...leg, station } });
    expect(problem.detail).toMatch(/got nothing\.$/);
  });

  it('a scale of no dots is told once, without a range that is none', async () => {
    const aircraft = { ...asked.aircraft, dotsFullScale: 0 };
    const problem = await refused('/api/advice', { ...asked, aircraft });
    expect(fieldsOf(problem)).toEqual(['aircraft.dotsFullScale']);
  });
});

describe('a station without a DME', () => {
  const blind = { ...leg.station, hasDme: false };

  it('has no leg that ends at a DME distance', async () => {
    const away = { ...leg, station: blind, direction: 'from', endDmeNm: 14 };
    const problem = await refused('/api/advice', { ...asked, leg: away, readings: [] });
    expect(fieldsOf(problem)).toEqual(['leg.endDmeNm']);
  });

  it('has no distance to read, on the leg or across it', async () => {
    const toBlind = await refused('/api/advice', { ...asked, leg: { ...leg, station: blind } });
    expect(fieldsOf(toBlind)).toEqual(['readings.0.dmeNm']);
    const across = { ...reading, station: blind };
    const crossed = await refused('/api/advice', { ...asked, readings: [across] });
    expect(fieldsOf(crossed)).toEqual(['readings.0.dmeNm']);
  });
});
