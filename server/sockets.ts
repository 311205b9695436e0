import type { FastifyInstance } from 'fastify';

/** Largest message that a socket may send, the same as a body. */
export const MOST_MESSAGE_BYTES = 1_048_576;

const GOING_AWAY = 1001;
const PATIENCE_MS = 1000;

/** Says good-bye to all sockets when the server ends; one that does not answer is cut off. */
export function endSockets(this: FastifyInstance, done: () => void): void {
  const sockets = [...this.websocketServer.clients];
  for (const socket of sockets) socket.close(GOING_AWAY, 'the server is ending');
  setTimeout(() => {
    for (const socket of sockets) socket.terminate();
  }, PATIENCE_MS).unref();
  this.websocketServer.close();
  done();
}
