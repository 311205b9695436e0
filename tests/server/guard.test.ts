import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { comesFromLoopback, guard, isLoopback } from '../../server/guard.ts';
import { get, ownDir, post, serve } from './serve.ts';

const outer = ownDir();
const pageDir = path.join(outer, 'page');
mkdirSync(path.join(pageDir, 'assets'), { recursive: true });
writeFileSync(path.join(outer, 'secret.txt'), 'secret');
writeFileSync(path.join(pageDir, 'index.html'), '<!doctype html><title>page</title>');
writeFileSync(path.join(pageDir, 'service-worker.js'), '// worker');
writeFileSync(path.join(pageDir, '.hidden'), 'hidden');
writeFileSync(path.join(pageDir, 'assets', 'index-Ab12_x9Z.js'), 'plain');
writeFileSync(path.join(pageDir, 'assets', 'index-Ab12_x9Z.js.br'), 'small');
writeFileSync(path.join(pageDir, 'assets', 'flite-worker-Ab12_x9Z.js'), 'worker');

const { port, app } = await serve({ pageDir });
const own = `127.0.0.1:${port}`;

describe('only this server may be addressed', () => {
  it.each([`127.0.0.1:${port}`, `localhost:${port}`, '127.0.0.1', '[::1]:4780', 'LOCALHOST'])(
    'the host %s is ours',
    async (host) => {
      expect((await get(port, '/api/health', { host })).status).toBe(200);
    },
  );

  it.each([
    'elsewhere.example',
    `elsewhere.example:${port}`,
    '127.0.0.1.elsewhere.example',
    '10.0.0.1',
    ' ',
  ])(
    'the host %j is refused (403): the name may have been pointed here by another site',
    async (host) => {
      expect((await get(port, '/api/health', { host })).status).toBe(403);
      expect((await get(port, '/', { host })).status).toBe(403);
    },
  );

  it.each(['http://elsewhere.example', 'null', 'http://127.0.0.1:1', 'file://'])(
    'the origin %s is refused (403)',
    async (origin) => {
      const answer = await post(port, '/api/flights', { name: 'x' }, { origin, host: own });
      expect(answer.status).toBe(403);
      expect(answer.headers['access-control-allow-origin']).toBeUndefined();
    },
  );

  it('the origin of our own page passes', async () => {
    const answer = await post(port, '/api/flights', { name: 'x' }, { origin: `http://${own}` });
    expect(answer.status).toBe(201);
  });

  it('loopback is 127.x.x.x, ::1 and localhost, and nothing that looks like them', () => {
    expect(['127.0.0.1', '127.3.2.1', '[::1]', 'localhost'].every(isLoopback)).toBe(true);
    expect(['127.0.0.1.x', '128.0.0.1', 'localhost.x', '1127.0.0.1'].some(isLoopback)).toBe(false);
    expect(['127.0.0.1', '::1', '::ffff:127.0.0.1'].every(comesFromLoopback)).toBe(true);
    expect(['192.168.1.4', '::ffff:10.0.0.1', 'fe80::1'].some(comesFromLoopback)).toBe(false);
  });

  it.each([
    ['0.0.0.0', '192.168.1.5', true],
    ['::', '192.168.1.5', true],
    ['192.168.1.5', '192.168.1.5', true],
    ['127.0.0.1', '192.168.1.5', false],
    ['0.0.0.0', '192.168.1.6', false],
    ['0.0.0.0', 'elsewhere.example', false],
    ['tablet.local', 'tablet.local', true],
  ])('with HOST=%s a call that came in on 192.168.1.5 for %s is ours: %s', (host, name, isOurs) => {
    const localAddress = '::ffff:192.168.1.5';
    const request = { host: `${name}:4780`, origin: undefined, localAddress };
    const judge = (): void => {
      guard(request, host);
    };
    if (isOurs) expect(judge).not.toThrow();
    else expect(judge).toThrow(/Host header/);
  });

  it('another machine gets 600 calls a minute, then 429 as a problem', async () => {
    const call = () =>
      app.inject({ url: '/api/health', remoteAddress: '192.168.1.9', headers: { host: own } });
    for (let count = 0; count < 600; count += 1) expect((await call()).statusCode).toBe(200);
    const answer = await call();
    expect(answer.statusCode).toBe(429);
    expect(answer.headers['content-type']).toBe('application/problem+json');
    expect(answer.json()).toMatchObject({ status: 429, title: 'Too Many Requests' });
    expect((await get(port, '/api/health')).status).toBe(200);
  });

  it('500 calls in a row pass from this machine', async () => {
    const calls = Array.from({ length: 500 }, () => get(port, '/api/health'));
    const answers = await Promise.all(calls);
    expect(answers.every(({ status }) => status === 200)).toBe(true);
  });
});

describe('the page', () => {
  it('is served at / and asked for anew each time, like the service worker', async () => {
    for (const at of ['/', '/index.html', '/service-worker.js']) {
      const answer = await get(port, at);
      expect(answer.status).toBe(200);
      expect(answer.headers['cache-control']).toBe('no-cache');
    }
  });

  it('has hashed files that may be kept for ever, compressed where the browser takes it', async () => {
    const at = '/assets/index-Ab12_x9Z.js';
    const plain = await get(port, at);
    const small = await get(port, at, { 'accept-encoding': 'gzip, br' });
    expect(plain.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(plain.text).toBe('plain');
    expect(small.headers['content-encoding']).toBe('br');
    expect(small.text).toBe('small');
    expect(small.headers['content-type']).toMatch(/javascript/);
  });

  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '//secret.txt',
    '/.hidden',
    '/%00',
  ])('gives nothing out beside itself: %s', async (at) => {
    const answer = await get(port, at);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.text).not.toContain('secret\n');
    expect(answer.text).not.toBe('secret');
  });

  it('allows no inline script, nothing from elsewhere, no frame, and says so on every answer', async () => {
    for (const at of ['/', '/api/health', '/nothing']) {
      const { headers } = await get(port, at);
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';");
      expect(policy).toContain("worker-src 'self';");
      expect(policy).toContain(`connect-src 'self' ws://${own};`);
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toContain('unsafe-inline');
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['strict-transport-security']).toBeUndefined();
    }
  });

  it('says what a document may do on a worker too, and not on a script, where it means nothing', async () => {
    const policyOf = async (at: string) => (await get(port, at)).headers['content-security-policy'];
    expect(await policyOf('/assets/flite-worker-Ab12_x9Z.js')).toContain("default-src 'self'");
    expect(await policyOf('/assets/gone-Ab12_x9Z.js')).toContain("default-src 'self'");
    expect(await policyOf('/assets/index-Ab12_x9Z.js')).toBeUndefined();
    const { headers } = await get(port, '/assets/index-Ab12_x9Z.js');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cross-origin-resource-policy']).toBe('same-origin');
  });
});
