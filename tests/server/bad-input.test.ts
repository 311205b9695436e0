import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/wire/problem.ts';
import { asked, idOf, leg, note, reading } from './examples.ts';
import { call, get, post, serve } from './serve.ts';
import type { Answer } from './serve.ts';

const { port } = await serve();

function problemIn(answer: Answer): Problem {
  expect(answer.headers['content-type']).toBe('application/problem+json');
  const problem = answer.json as Problem;
  expect(problem.status).toBe(answer.status);
  expect(problem.title).not.toBe('');
  expect(problem.detail).not.toBe('');
  return problem;
}

async function fieldsRefused(at: string, body: unknown): Promise<string[]> {
  const answer = await post(port, at, body);
  expect(answer.status).toBe(422);
  return problemIn(answer).errors.map(({ field }) => field);
}

const withReading = (fields: object) => ({ ...asked, readings: [{ ...reading, ...fields }] });
const withLeg = (fields: object) => ({ ...asked, leg: { ...leg, ...fields } });
const withAircraft = (fields: object) => ({
  ...asked,
  aircraft: { ...asked.aircraft, ...fields },
});
const withStation = (fields: object) => withLeg({ station: { ...leg.station, ...fields } });

describe('a request for advice with something impossible in it is refused by field (422)', () => {
  it.each([
    ['a course of 400', withLeg({ courseDeg: 400 }), 'leg.courseDeg'],
    ['a course in words', withLeg({ courseDeg: 'east' }), 'leg.courseDeg'],
    ['a direction that is none', withLeg({ direction: 'by' }), 'leg.direction'],
    ['a needle past full scale', withReading({ needleDots: -5.5 }), 'readings.0.needleDots'],
    ['a heading of 361', withReading({ headingDeg: 361 }), 'readings.0.headingDeg'],
    ['a negative DME distance', withReading({ dmeNm: -1 }), 'readings.0.dmeNm'],
    ['a flag that is none', withReading({ flag: 'maybe' }), 'readings.0.flag'],
    ['a negative airspeed', withAircraft({ trueAirspeedKt: -95 }), 'aircraft.trueAirspeedKt'],
    ['no airspeed', withAircraft({ trueAirspeedKt: null }), 'aircraft.trueAirspeedKt'],
    ['a latitude of 91', withStation({ latitudeDeg: 91 }), 'leg.station.latitudeDeg'],
    ['an ident of five letters', withStation({ ident: 'QEVQE' }), 'leg.station.ident'],
    ['an altitude below the station', withLeg({ altitudeFt: 300 }), 'leg.altitudeFt'],
    [
      'a wind of 900 knots',
      { ...asked, forecastWind: { fromDegTrue: 330, speedKt: 900 } },
      'forecastWind.speedKt',
    ],
    ['a day that is none', { ...asked, dateIso: '2026-13-40' }, 'dateIso'],
    ['a day before the magnetic model', { ...asked, dateIso: '1999-01-01' }, 'dateIso'],
    ['an unknown field', { ...asked, colour: 'red' }, 'colour'],
    ['an unknown field deep inside', withStation({ colour: 'red' }), 'leg.station.colour'],
    ['a field named __proto__ is unknown', withLeg({ constructor: 1 }), 'leg.constructor'],
    ['no leg', { ...asked, leg: undefined }, 'leg'],
    ['readings that are no list', { ...asked, readings: {} }, 'readings'],
    ['2,001 readings', { ...asked, readings: Array(2001).fill({}) }, 'readings'],
    [
      'an impossible station in a cross-bearing',
      withReading({ station: { ...leg.station, longitudeDeg: 181 } }),
      'readings.0.station.longitudeDeg',
    ],
  ])('%s', async (_what, body, field) => {
    expect(await fieldsRefused('/api/advice', body)).toContain(field);
  });

  it('names every field at fault, says what was expected and repeats what was given', async () => {
    const body = { ...withReading({ needleDots: 9 }), leg: { ...leg, courseDeg: 400 } };
    const { errors, detail } = problemIn(await post(port, '/api/advice', body));
    expect(errors.map(({ field }) => field)).toEqual(['leg.courseDeg', 'readings.0.needleDots']);
    expect(errors[0]?.got).toBe('400');
    expect(errors[0]?.expected).toMatch(/course.*0 to 360/);
    expect(detail).toContain('leg.courseDeg');
  });

  it('tells an unknown field by its name and "no such field"', async () => {
    const { errors } = problemIn(await post(port, '/api/advice', { ...asked, colour: 'red' }));
    expect(errors).toEqual([{ field: 'colour', expected: 'no such field', got: '"red"' }]);
  });
});

describe('a body that is no JSON is refused before any field is looked at', () => {
  it.each([
    ['broken JSON', '{"leg": {', 400],
    ['no JSON', 'hello', 400],
    ['an empty body', '', 400],
    ['a key that would change all objects', '{"__proto__": {"a": 1}}', 400],
    ['null', 'null', 400],
  ])('%s', async (_what, body, status) => {
    const answer = await post(port, '/api/advice', body);
    expect(answer.status).toBe(status);
    problemIn(answer);
  });

  it.each(['[]', '"text"', '7'])(
    '%s is JSON, but no object: the body is at fault',
    async (body) => {
      expect(await fieldsRefused('/api/advice', body)).toEqual(['body']);
    },
  );

  it('a list that is 100,000 deep is refused and stops nothing', async () => {
    const answer = await post(port, '/api/advice', `${'['.repeat(1e5)}${']'.repeat(1e5)}`);
    expect(answer.status).toBe(422);
    const nested = `{"leg":${'['.repeat(1e5)}${']'.repeat(1e5)}}`;
    expect((await post(port, '/api/advice', nested)).status).toBe(422);
  });

  it.each([
    'text/plain',
    'application/xml',
    'multipart/form-data',
    'application/x-www-form-urlencoded',
  ])('the media type %s is refused (415)', async (type) => {
    const answer = await post(port, '/api/advice', '{}', { 'content-type': type });
    expect(answer.status).toBe(415);
    problemIn(answer);
  });

  it('no media type at all is refused (415)', async () => {
    const answer = await call(port, { path: '/api/advice', method: 'POST' }, '{}');
    expect(answer.status).toBe(415);
  });

  it('10 MB are refused (413), and the answer arrives', async () => {
    const answer = await post(port, '/api/advice', 'a'.repeat(10_000_000));
    expect(answer.status).toBe(413);
    problemIn(answer);
  });

  it('10 MB whose length nobody has announced are refused too', async () => {
    const headers = { 'content-type': 'application/json', 'transfer-encoding': 'chunked' };
    const body = Buffer.alloc(10_000_000, 'a');
    const answer = await call(port, { path: '/api/advice', method: 'POST', headers }, body);
    expect(answer.status).toBe(413);
  });
});

describe('a place that is not there', () => {
  it.each(['/api/nothing', '/api/', '/nothing', '/api/flights/x/y/z', '/ws/nothing'])(
    '%s is 404, as a problem',
    async (at) => {
      const answer = await get(port, at);
      expect(answer.status).toBe(404);
      problemIn(answer);
    },
  );

  it('a known place with another method is 405 and tells the methods that there are', async () => {
    const answer = await call(port, { path: '/api/advice', method: 'DELETE' });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toContain('POST');
    problemIn(answer);
  });

  it.each(['/api/%zz', '/api/ident/%ff.wav', `/api/flights/${'a'.repeat(500)}`])(
    'the odd path %s is refused without a 500',
    async (at) => {
      const answer = await get(port, at);
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.status).toBeLessThan(500);
      problemIn(answer);
    },
  );
});

describe('events with something impossible in them are refused, all of them', async () => {
  const id = ((await post(port, '/api/flights', { name: 'bad input' })).json as { id: string }).id;
  const at = `/api/flights/${id}/events`;
  const stamp = { id: idOf(7), atMs: 1000 };

  it.each([
    ['an id that is no ULID', { ...note(1), id: 'one' }, 'events.1.id'],
    ['a moment that is no whole number', { ...note(1), atMs: 0.5 }, 'events.1.atMs'],
    ['a moment before 1970', { ...note(1), atMs: -1 }, 'events.1.atMs'],
    ['a kind that is none', { ...stamp, kind: 'song' }, 'events.1.kind'],
    ['no kind', stamp, 'events.1.kind'],
    ['an unknown field', { ...note(1), colour: 'red' }, 'events.1.colour'],
    ['a note without text', { ...stamp, kind: 'note' }, 'events.1.text'],
    ['a heading of 361', { ...stamp, kind: 'reading', headingDeg: 361 }, 'events.1.headingDeg'],
    [
      'a needle past any scale',
      { ...stamp, kind: 'reading', needleDots: 11 },
      'events.1.needleDots',
    ],
    [
      'a plan with a course of 400',
      {
        ...stamp,
        kind: 'plan',
        name: 'x',
        legs: [leg, { ...leg, courseDeg: 400 }],
        aircraft: asked.aircraft,
        dateIso: '2026-11-25',
      },
      'events.1.legs.1.courseDeg',
    ],
    ['a string instead of an event', 'note', 'events.1'],
  ])('%s', async (_what, event, field) => {
    expect(await fieldsRefused(at, { events: [note(0), event] })).toContain(field);
    expect((await get(port, at)).json).toEqual({ events: [] });
  });

  it.each([
    ['no events', { events: [] }],
    ['1,001 events', { events: Array.from({ length: 1001 }, (_, number) => note(number)) }],
    ['no list', { events: 'all' }],
  ])('%s: the list itself is at fault', async (_what, body) => {
    expect(await fieldsRefused(at, body)).toEqual(['events']);
  });

  it.each([
    ['no name', {}, 'name'],
    ['an empty name', { name: '' }, 'name'],
    ['an id that is no ULID', { name: 'x', id: '../../etc/passwd' }, 'id'],
  ])('a flight with %s is refused', async (_what, body, field) => {
    expect(await fieldsRefused('/api/flights', body)).toEqual([field]);
  });

  it('a flight that is not there is 404 for reading and for appending', async () => {
    expect((await get(port, `/api/flights/${idOf(99)}`)).status).toBe(404);
    expect((await get(port, `/api/flights/${idOf(99)}/events`)).status).toBe(404);
    const answer = await post(port, `/api/flights/${idOf(99)}/events`, { events: [note(1)] });
    expect(answer.status).toBe(404);
    problemIn(answer);
  });

  it('an afterId that is no event of the flight is refused, an unknown query too', async () => {
    expect((await get(port, `${at}?afterId=${idOf(98)}`)).status).toBe(422);
    expect((await get(port, `${at}?afterId=x`)).status).toBe(422);
    expect((await get(port, `${at}?after=x`)).status).toBe(422);
  });
});
