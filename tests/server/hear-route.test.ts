import { describe, expect, it } from 'vitest';
import { serve } from './serve.ts';

const { port } = await serve();

describe('POST /api/hear, without a recogniser', () => {
  it('says in a problem (RFC 9457) that it cannot hear, and what to do instead', async () => {
    const response = await hear('audio/wav', new Uint8Array(20_000));
    expect(response.status).toBe(503);
    expect(response.headers.get('content-type')).toMatch(/^application\/problem\+json/);
    expect(await response.json()).toMatchObject({
      status: 503,
      detail: expect.stringMatching(/type or tap/i) as string,
    });
  });

  it.each([
    ['application/json', 10, 415, /audio\/wav/],
    ['audio/wav', 7_000_000, 413, /6 MB/],
  ])('refuses %s of %i bytes with %i', async (type, length, status, says) => {
    const response = await hear(type, new Uint8Array(length));
    expect(response.status).toBe(status);
    expect(await response.text()).toMatch(says);
  });
});

function hear(type: string, body: Uint8Array<ArrayBuffer>): Promise<Response> {
  return fetch(`http://127.0.0.1:${port}/api/hear`, {
    method: 'POST',
    headers: { 'content-type': type },
    body,
  });
}
