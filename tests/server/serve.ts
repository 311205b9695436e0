import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import type { IncomingHttpHeaders, RequestOptions } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterAll } from 'vitest';
import { buildApp } from '../../server/app.ts';
import { openRecords } from '../../server/records.ts';

/** A directory of its own, gone after the tests of the file. */
export function ownDir(): string {
  const dir = mkdtempSync(path.join(tmpdir(), 'spoken-radial-'));
  afterAll(() => {
    rmSync(dir, { recursive: true, force: true });
  });
  return dir;
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly bytes: Buffer;
  /** The body as text, and as JSON where it is. */
  readonly text: string;
  readonly json: unknown;
}

/** One call with nothing added or tidied up on the way: the path and the headers go out as they are. */
export function call(
  port: number,
  options: RequestOptions,
  body?: string | Buffer,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = httpRequest({ host: '127.0.0.1', port, agent: false, ...options }, (answer) => {
      const chunks: Buffer[] = [];
      answer.on('data', (chunk: Buffer) => chunks.push(chunk));
      answer.on('error', reject);
      answer.on('end', () => {
        const bytes = Buffer.concat(chunks);
        const text = bytes.toString('utf8');
        const { statusCode = 0, headers } = answer;
        const isJson = (headers['content-type'] ?? '').includes('json');
        resolve({
          status: statusCode,
          headers,
          bytes,
          text,
          json: isJson && text !== '' ? JSON.parse(text) : null,
        });
      });
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

export const get = (port: number, at: string, headers = {}): Promise<Answer> =>
  call(port, { path: at, headers });

export const post = (port: number, at: string, body: unknown, headers = {}): Promise<Answer> =>
  call(
    port,
    { path: at, method: 'POST', headers: { 'content-type': 'application/json', ...headers } },
    typeof body === 'string' ? body : JSON.stringify(body),
  );

/** The app on a real socket, on a free port; closed after the tests of the file. */
export async function serve(
  parts: { readonly pageDir?: string; readonly nowMs?: number; readonly host?: string } = {},
): Promise<{ readonly port: number; readonly app: FastifyInstance }> {
  const dataDir = ownDir();
  const records = openRecords(dataDir);
  const app = await buildApp({
    records,
    pageDir: parts.pageDir ?? path.join(dataDir, 'no-page'),
    version: '1.2.3',
    host: parts.host ?? '127.0.0.1',
    now: () => parts.nowMs ?? Date.UTC(2026, 10, 25, 12),
  });
  await app.listen({ port: 0, host: '127.0.0.1' });
  afterAll(async () => {
    await app.close();
    records.close();
  });
  return { port: (app.server.address() as AddressInfo).port, app };
}

export interface Running {
  readonly child: ChildProcess;
  readonly port: number;
  readonly output: () => string;
}

const READY = /http:\/\/127\.0\.0\.1:(\d+)/;

/** The server as a process of its own, as it runs in earnest. Rejects with its output when it gives up. */
export function spawnServer(environment: Readonly<Record<string, string>>): Promise<Running> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    env: { ...process.env, PORT: '0', ...environment },
  });
  afterAll(() => {
    child.kill('SIGKILL');
  });
  let output = '';
  return new Promise((resolve, reject) => {
    const hear = (chunk: Buffer): void => {
      output += chunk.toString('utf8');
      const port = READY.exec(output)?.[1];
      if (output.includes('is ready') && port !== undefined)
        resolve({ child, port: Number(port), output: () => output });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('close', (code) => {
      reject(new Error(`exit ${code ?? 'by signal'}: ${output}`));
    });
  });
}

/** Ends a server with a signal; gives its exit code, null when the signal itself ended it. */
export function endServer({ child }: Running, signal: NodeJS.Signals): Promise<number | null> {
  return new Promise((resolve) => {
    child.once('close', resolve);
    child.kill(signal);
  });
}
