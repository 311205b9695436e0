import { describe, expect, it } from 'vitest';
import { openHearingPool } from '../../server/hearing-pool.ts';
import { identWav, readIdentRequest } from '../../src/ident/ident-request.ts';
import { writeWav } from '../../src/ident/wav.ts';
import type { Problem } from '../../src/wire/problem.ts';
import { call, endServer, get, ownDir, serve, spawnServer } from './serve.ts';
import type { Answer } from './serve.ts';

const { port, app } = await serve();

const send = (at: string, body: Uint8Array, type = 'audio/wav', to = port): Promise<Answer> =>
  call(
    to,
    { path: at, method: 'POST', headers: { 'content-type': type, 'content-length': body.length } },
    Buffer.from(body),
  );

function wavOf(ident: string, query = {}): Uint8Array {
  const request = readIdentRequest(ident, { repeats: 1, ...query });
  if (!request.ok) throw new Error(JSON.stringify(request.problem));
  return identWav(request.value);
}

const QEV = wavOf('QEV');
const SILENCE = writeWav(new Float32Array(80_000), 8000);
/** A minute: more work than any other request is. */
const LONG = wavOf('QEV', { repeats: 6, sampleRateHz: 8000 });

function refusedAs(answer: Answer, status: number): Problem {
  expect(answer.headers['content-type']).toBe('application/problem+json');
  expect(answer.status).toBe(status);
  return answer.json as Problem;
}

describe('POST /api/ident/decode', () => {
  it('gives the letters with their patterns, the tone and the speed as they were keyed', async () => {
    const { status, json } = await send('/api/ident/decode', QEV);
    expect(status).toBe(200);
    const heard = json as { toneHz: number; wpm: number; confidence: number };
    expect(heard).toMatchObject({
      letters: 'QEV',
      repeats: 1,
      perLetter: [
        { letter: 'Q', pattern: '--.-' },
        { letter: 'E', pattern: '.' },
        { letter: 'V', pattern: '...-' },
      ],
      why: null,
    });
    expect(heard.confidence).toBeGreaterThan(0.9);
    expect(heard.toneHz).toBeCloseTo(1020, 0);
    expect(heard.wpm).toBeCloseTo(7, 0);
  });

  it('says null where there is nothing, and why', async () => {
    const { status, json } = await send('/api/ident/decode', SILENCE);
    expect(status).toBe(200);
    expect(json).toMatchObject({ letters: null, why: expect.stringMatching(/\.$/) as string });
  });

  it.each(['audio/x-wav', 'audio/wave', 'application/octet-stream', 'AUDIO/WAV; codecs=1'])(
    'takes %s as well',
    async (type) => {
      expect((await send('/api/ident/decode', QEV, type)).json).toMatchObject({ letters: 'QEV' });
    },
  );
});

describe('POST /api/ident/confirm', () => {
  it('confirms the ident that is keyed, in letters of either case', async () => {
    const { status, json } = await send('/api/ident/confirm?expected=qev', QEV);
    expect(status).toBe(200);
    expect(json).toMatchObject({ verdict: 'confirmed', heard: 'QEV' });
  });

  it('never confirms another one', async () => {
    const { json } = await send('/api/ident/confirm?expected=QEU', QEV);
    expect(json).toMatchObject({
      heard: 'QEV',
      verdict: expect.not.stringMatching('confirmed') as string,
    });
  });

  it('cannot tell from silence', async () => {
    const { json } = await send('/api/ident/confirm?expected=QEV', SILENCE);
    expect(json).toMatchObject({ verdict: 'cannot-tell', heard: null });
  });

  it('says that figures are not read', async () => {
    const { status, json } = await send('/api/ident/confirm?expected=q1', QEV);
    expect(status).toBe(200);
    const why = expect.stringContaining('figures') as string;
    expect(json).toMatchObject({ verdict: 'cannot-tell', why });
  });

  it('takes the idents that can be received there', async () => {
    const at = '/api/ident/confirm?expected=QEV&rivals=QEV,XUN,kav';
    expect((await send(at, QEV)).json).toMatchObject({ verdict: 'confirmed' });
  });

  it.each([
    ['/api/ident/confirm', 'expected'],
    ['/api/ident/confirm?expected=', 'expected'],
    ['/api/ident/confirm?expected=QEVQE', 'expected'],
    ['/api/ident/confirm?expected=Q-V', 'expected'],
    ['/api/ident/confirm?expected=QEV&expected=ABC', 'expected'],
    ['/api/ident/confirm?expected=QEV&rivals=', 'rivals'],
    ['/api/ident/confirm?expected=QEV&rivals=QEV%20ABC', 'rivals'],
    ['/api/ident/confirm?expected=QEV&colour=red', 'colour'],
    ['/api/ident/decode?expected=QEV', 'expected'],
  ])('%s is refused by its field %s', async (at, field) => {
    expect(refusedAs(await send(at, QEV), 422).errors).toMatchObject([{ field }]);
  });
});

describe.each(['/api/ident/decode', '/api/ident/confirm?expected=QEV'])('%s refuses', (at) => {
  it.each([
    ['nothing', new Uint8Array(0), 'nothing'],
    ['what is no WAV', Buffer.from('this is no sound'), 'something else'],
    ['an MP3 file', Buffer.from('ID3 and the rest'), 'an MP3 file'],
    ['a WAV with no sound in it', QEV.slice(0, 44), 'a file without sound in it'],
    ['an hour', writeWav(new Float32Array(8000 * 3600), 8000), '60 minutes'],
  ])('%s, by the field body (422)', async (_what, body, got) => {
    const { errors } = refusedAs(await send(at, body), 422);
    expect(errors).toMatchObject([{ field: 'body', got }]);
  });

  it.each(['application/json', 'text/csv', 'audio/mpeg', 'multipart/form-data; boundary=x'])(
    'the media type %s (415)',
    async (type) => {
      const { errors } = refusedAs(await send(at, QEV, type), 415);
      expect(errors).toMatchObject([{ field: 'content-type', expected: 'audio/wav' }]);
    },
  );

  it('a body of no media type, and none at all (415)', async () => {
    refusedAs(await call(port, { path: at, method: 'POST' }, Buffer.from(QEV)), 415);
    refusedAs(await call(port, { path: at, method: 'POST' }), 415);
  });

  it('more than 64 MB, announced or not, and says so (413)', async () => {
    const body = Buffer.alloc(70_000_000);
    const { detail, errors } = refusedAs(await send(at, body), 413);
    expect(detail).toContain('64 MB');
    expect(errors).toMatchObject([{ field: 'body', expected: 'at most 64 MB' }]);
    const headers = { 'content-type': 'audio/wav', 'transfer-encoding': 'chunked' };
    refusedAs(await call(port, { path: at, method: 'POST', headers }, body), 413);
  });

  it('another method than POST', async () => {
    expect((await call(port, { path: at, method: 'PUT' })).status).toBe(405);
  });
});

describe('a recording that is being decoded', () => {
  it('does not keep other requests waiting', async () => {
    const order: string[] = [];
    const decoding = Array.from({ length: 2 }, () =>
      send('/api/ident/decode', LONG).then(({ status }) => order.push(`decoded ${status}`)),
    );
    for (let count = 0; count < 10; count += 1)
      order.push(`health ${(await get(port, '/api/health')).status}`);
    await Promise.all(decoding);
    expect(order).toEqual([
      ...Array<string>(10).fill('health 200'),
      ...Array<string>(2).fill('decoded 200'),
    ]);
  });

  it('is refused (503), not left hanging, when the server ends', async () => {
    const other = await serve();
    const decoding = Array.from({ length: 2 }, () =>
      send('/api/ident/decode', LONG, 'audio/wav', other.port),
    );
    // The last of them is in the queue by the time this one is answered.
    await send('/api/ident/decode', new Uint8Array(0), 'audio/x-wav', other.port).catch(() => null);
    await other.app.close();
    for (const answer of await Promise.all(decoding)) expect([200, 503]).toContain(answer.status);
  });

  it('is passed over once nobody waits for it', async () => {
    const pool = openHearingPool();
    const hearing = () => ({ wav: Uint8Array.from(QEV), expected: null, known: {} });
    let isGone = false;
    // Four before it: as many as are ever decoded at once.
    const before = [1, 2, 3, 4].map(() => pool.hear(hearing(), () => false));
    const gone = pool.hear(hearing(), () => isGone).catch((error: unknown) => error);
    const after = pool.hear(hearing(), () => false);
    isGone = true;
    for (const heard of await Promise.all([...before, after])) expect(heard.ok).toBe(true);
    expect(await gone).toMatchObject({ statusCode: 503 });
    await pool.close();
  });

  it('does not keep the server from ending by SIGTERM with 0', async () => {
    const server = await spawnServer({ DATA_DIR: ownDir() });
    const decoding = send('/api/ident/decode', LONG, 'audio/wav', server.port).catch(() => null);
    await get(server.port, '/api/health');
    expect(await endServer(server, 'SIGTERM')).toBe(0);
    await decoding;
  });
});

describe('sound anywhere else', () => {
  it('is refused as before (415)', async () => {
    refusedAs(await send('/api/advice', QEV), 415);
    expect(app.hasRoute({ method: 'POST', url: '/api/ident/decode' })).toBe(true);
  });
});
