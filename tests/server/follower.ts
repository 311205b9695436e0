import WebSocket from 'ws';
import { afterAll } from 'vitest';

export interface Follower {
  readonly socket: WebSocket;
  readonly send: (message: unknown) => void;
  /** All messages so far. */
  readonly messages: readonly unknown[];
  /** Settles when so many messages have come. */
  readonly until: (count: number) => Promise<readonly unknown[]>;
  readonly closed: Promise<number>;
}

/** Opens a socket on a flight; rejects with the status where the server does not want it. */
export function openSocket(port: number, id: string, origin?: string): Promise<Follower> {
  const socket = new WebSocket(`ws://127.0.0.1:${port}/ws/flights/${id}`, {
    ...(origin === undefined ? {} : { origin }),
  });
  afterAll(() => {
    socket.terminate();
  });
  const messages: unknown[] = [];
  const waiting = new Set<() => void>();
  socket.on('message', (data: Buffer) => {
    messages.push(JSON.parse(data.toString('utf8')));
    for (const look of waiting) look();
  });
  const until = (count: number): Promise<readonly unknown[]> =>
    new Promise((resolve) => {
      const look = (): void => {
        if (messages.length < count) return;
        waiting.delete(look);
        resolve([...messages]);
      };
      waiting.add(look);
      look();
    });
  const closed = new Promise<number>((resolve) => {
    socket.once('close', resolve);
  });
  return new Promise((resolve, reject) => {
    socket.once('unexpected-response', (_request, answer) => {
      reject(new Error(`status ${answer.statusCode ?? 0}`));
    });
    socket.once('error', reject);
    socket.once('open', () => {
      const send = (message: unknown): void => {
        socket.send(typeof message === 'string' ? message : JSON.stringify(message));
      };
      resolve({ socket, send, messages, until, closed });
    });
  });
}
