import { describe, expect, it } from 'vitest';
import { idOf, note } from './examples.ts';
import { openSocket } from './follower.ts';
import { get, post, serve } from './serve.ts';

const { port } = await serve();

async function newFlight(count = 0): Promise<string> {
  const { json } = await post(port, '/api/flights', { name: 'followed' });
  const { id } = json as { id: string };
  const events = Array.from({ length: count }, (_, number) => note(number));
  if (count > 0) await append(id, events);
  return id;
}

const append = (id: string, events: readonly unknown[]) =>
  post(port, `/api/flights/${id}/events`, { events });

const notes = (from: number, to: number) =>
  Array.from({ length: to - from }, (_, index) => note(from + index));

describe('following a flight', () => {
  it('sends what is recorded, then what is appended, as bare events', async () => {
    const id = await newFlight(3);
    const follower = await openSocket(port, id);
    follower.send({ afterId: null });
    expect(await follower.until(3)).toEqual(notes(0, 3));
    await append(id, [note(3)]);
    expect(await follower.until(4)).toEqual(notes(0, 4));
  });

  it('goes on after the event that the greeting names', async () => {
    const id = await newFlight(5);
    const follower = await openSocket(port, id);
    follower.send({ afterId: idOf(2) });
    expect(await follower.until(2)).toEqual(notes(3, 5));
  });

  it('sends each event once, also those that are appended while the recorded ones are being sent', async () => {
    const id = await newFlight(1000);
    const followers = await Promise.all([1, 2, 3].map(() => openSocket(port, id)));
    for (const follower of followers) follower.send({ afterId: null });
    for (let number = 1000; number < 1060; number += 1) await append(id, [note(number)]);
    for (const follower of followers) {
      await follower.until(1060);
      expect(follower.messages).toEqual(notes(0, 1060));
    }
  });

  it('sends late events in the order in which they arrived, so that no place to go on is wrong', async () => {
    const id = await newFlight();
    const follower = await openSocket(port, id);
    follower.send({ afterId: null });
    await append(id, [note(8)]);
    await append(id, [note(2)]);
    expect(await follower.until(2)).toEqual([note(8), note(2)]);
    const later = await openSocket(port, id);
    later.send({ afterId: idOf(8) });
    expect(await later.until(1)).toEqual([note(2)]);
  });

  it('takes events through the socket, answers, and a second socket sees them', async () => {
    const id = await newFlight();
    const [one, other] = [await openSocket(port, id), await openSocket(port, id)];
    other.send({ afterId: null });
    one.send({ events: [note(1), note(2)] });
    expect(await one.until(1)).toEqual([{ added: 2, known: 0 }]);
    expect(await other.until(2)).toEqual([note(1), note(2)]);
    const { json } = await get(port, `/api/flights/${id}/events`);
    expect(json).toEqual({ events: [note(1), note(2)] });
  });

  it('answers what it cannot take with a problem, and the socket goes on', async () => {
    const id = await newFlight();
    const socket = await openSocket(port, id);
    socket.send('{broken');
    socket.send({ events: [{ ...note(1), colour: 'red' }] });
    socket.send({ hello: 'there' });
    socket.send({ events: [note(1)] });
    const answers = await socket.until(4);
    expect(answers).toMatchObject([
      { problem: { status: 400 } },
      { problem: { status: 422, errors: [{ field: 'events.0.colour' }] } },
      { problem: { status: 422 } },
      { added: 1, known: 0 },
    ]);
  });

  it('ends a socket that wants to go on after an event that is not there', async () => {
    const socket = await openSocket(port, await newFlight(1));
    socket.send({ afterId: idOf(77) });
    expect(await socket.until(1)).toMatchObject([{ problem: { errors: [{ field: 'afterId' }] } }]);
    expect(await socket.closed).toBe(1008);
  });

  it('is refused for a flight that is not there, and for a page of another site', async () => {
    await expect(openSocket(port, idOf(99))).rejects.toThrow('404');
    const id = await newFlight();
    await expect(openSocket(port, id, 'http://elsewhere.example')).rejects.toThrow('403');
    await expect(openSocket(port, id, `http://127.0.0.1:${port}`)).resolves.toBeDefined();
  });

  it('ends a socket that sends more than 1 MB, and the server goes on', async () => {
    const id = await newFlight();
    const socket = await openSocket(port, id);
    socket.send('a'.repeat(2_000_000));
    expect(await socket.closed).toBe(1009);
    expect((await append(id, [note(1)])).status).toBe(200);
  });

  it('without a WebSocket says what it is', async () => {
    expect((await get(port, `/ws/flights/${await newFlight()}`)).status).toBe(426);
  });
});
