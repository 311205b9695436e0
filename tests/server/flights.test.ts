import { describe, expect, it } from 'vitest';
import { aircraft, idOf, leg, note, reading } from './examples.ts';
import { get, post, serve } from './serve.ts';

const { port } = await serve();

async function newFlight(name = 'a flight'): Promise<string> {
  const { json } = await post(port, '/api/flights', { name });
  return (json as { id: string }).id;
}

const append = (id: string, events: readonly unknown[]) =>
  post(port, `/api/flights/${id}/events`, { events });

async function eventsOf(id: string, query = ''): Promise<unknown> {
  const { json } = await get(port, `/api/flights/${id}/events${query}`);
  return (json as { events: unknown }).events;
}

describe('the record of a flight', () => {
  it('begins with 201, an id that is a ULID, and its address', async () => {
    const { status, json, headers } = await post(port, '/api/flights', { name: 'first' });
    const { id } = json as { id: string };
    expect(status).toBe(201);
    expect(id).toMatch(/^[0-7][0-9A-HJKMNP-TV-Z]{25}$/);
    expect(headers.location).toBe(`/api/flights/${id}`);
  });

  it('takes the id of a flight that was born elsewhere, and takes it again', async () => {
    const flight = { name: 'born at sea', id: idOf(500) };
    expect((await post(port, '/api/flights', flight)).status).toBe(201);
    const again = await post(port, '/api/flights', flight);
    expect(again.status).toBe(200);
    expect(again.json).toEqual({ id: flight.id });
  });

  it('is listed with its name, its count and its first and last moment', async () => {
    const id = await newFlight('listed');
    await append(id, [note(2), note(5)]);
    const summary = {
      id,
      name: 'listed',
      createdAtMs: Date.UTC(2026, 10, 25, 12),
      eventCount: 2,
      firstAtMs: note(2).atMs,
      lastAtMs: note(5).atMs,
    };
    expect((await get(port, `/api/flights/${id}`)).json).toEqual(summary);
    const { json } = await get(port, '/api/flights');
    expect((json as { flights: unknown[] }).flights).toContainEqual(summary);
  });
});

describe('appending events', () => {
  it('gives them back as they were, of every kind', async () => {
    const id = await newFlight();
    const { atMs, ...fields } = reading;
    const events = [
      {
        id: idOf(0),
        atMs,
        kind: 'plan',
        name: 'two legs',
        legs: [leg],
        aircraft,
        dateIso: '2026-11-25',
      },
      { id: idOf(1), atMs: 1, kind: 'leg-started', legIndex: 0 },
      { id: idOf(2), atMs: 2, kind: 'check', legIndex: 0, item: 'tune', outcome: 'done' },
      { id: idOf(3), atMs: 3, kind: 'ident', legIndex: 0, outcome: 'confirmed', by: 'ear' },
      { id: idOf(4), atMs: 4, kind: 'reading', ...fields, via: 'typed', text: 'needle one left' },
      { id: idOf(5), atMs: 5, kind: 'reading-corrected', readingId: idOf(4), needleDots: 1 },
      { id: idOf(6), atMs: 6, kind: 'taken-back', eventId: idOf(4) },
      { id: idOf(7), atMs: 7, kind: 'note', text: 'Ein Gruß über den Wolken ✈' },
      { id: idOf(8), atMs: 8, kind: 'finished' },
    ];
    expect((await append(id, events)).json).toEqual({ added: 9, known: 0 });
    expect(await eventsOf(id)).toEqual(events);
  });

  it('twice is harmless: what is recorded already counts as known', async () => {
    const id = await newFlight();
    await append(id, [note(1), note(2)]);
    expect((await append(id, [note(2), note(3)])).json).toEqual({ added: 1, known: 1 });
    expect((await append(id, [note(4), note(4)])).json).toEqual({ added: 1, known: 1 });
    expect(await eventsOf(id)).toEqual([note(1), note(2), note(3), note(4)]);
  });

  it('with the fields in another order is the same event', async () => {
    const id = await newFlight();
    await append(id, [note(1)]);
    const turned = Object.fromEntries(Object.entries(note(1)).reverse());
    expect((await append(id, [turned])).json).toEqual({ added: 0, known: 1 });
  });

  it('under a known id with other content is refused, and nothing of the batch is recorded', async () => {
    const id = await newFlight();
    await append(id, [note(1)]);
    const refused = await append(id, [note(2), note(1, 'another text'), note(3)]);
    expect(refused.status).toBe(422);
    expect(refused.json).toMatchObject({ errors: [{ field: 'events.1.id' }] });
    expect(await eventsOf(id)).toEqual([note(1)]);
  });

  it('lets two flights have an event of the same id', async () => {
    const [one, other] = [await newFlight(), await newFlight()];
    await append(one, [note(1)]);
    expect((await append(other, [note(1, 'another text')])).json).toEqual({ added: 1, known: 0 });
  });

  it('takes 1,000 at once', async () => {
    const id = await newFlight();
    const events = Array.from({ length: 1000 }, (_, number) => note(number));
    expect((await append(id, events)).json).toEqual({ added: 1000, known: 0 });
    expect(await eventsOf(id)).toHaveLength(1000);
  });

  it('answers 300 appends that come at the same time, each once', async () => {
    const id = await newFlight();
    const numbers = Array.from({ length: 300 }, (_, number) => number);
    const answers = await Promise.all(numbers.map((number) => append(id, [note(number)])));
    expect(answers.every(({ status }) => status === 200)).toBe(true);
    expect(await eventsOf(id)).toEqual(numbers.map((number) => note(number)));
  });
});

describe('reading events', () => {
  it('gives them by their time, then their id, however they arrived', async () => {
    const id = await newFlight();
    const sameMoment = { ...note(3), id: idOf(9) };
    await append(id, [sameMoment, note(4)]);
    await append(id, [note(3), note(1)]);
    expect(await eventsOf(id)).toEqual([note(1), note(3), sameMoment, note(4)]);
  });

  it('after an event gives those that arrived later, also when they happened earlier', async () => {
    const id = await newFlight();
    await append(id, [note(5)]);
    await append(id, [note(6)]);
    await append(id, [note(2), note(7)]);
    expect(await eventsOf(id, `?afterId=${idOf(6)}`)).toEqual([note(2), note(7)]);
    expect(await eventsOf(id, `?afterId=${idOf(7)}`)).toEqual([]);
  });
});
