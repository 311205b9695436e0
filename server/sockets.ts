import type { WebSocket } from '@fastify/websocket';
import type { FastifyInstance } from 'fastify';

/** Largest message that a socket may send, the same as a body. */
export const MOST_MESSAGE_BYTES = 1_048_576;

const GOING_AWAY = 1001;
const PATIENCE_MS = 1000;
const HEARTBEAT_MS = 30_000;

/**
 * Drops sockets whose other end has vanished without a word (a tablet out of reach closes nothing): each
 * is asked from time to time, and one that has not answered by the next time is cut off.
 */
export function dropDeadSockets(app: FastifyInstance): void {
  const asked = new WeakSet<WebSocket>();
  app.websocketServer.on('connection', (socket: WebSocket) => {
    socket.on('pong', () => asked.delete(socket));
  });
  const heartbeat = setInterval(() => {
    for (const socket of app.websocketServer.clients) {
      if (asked.has(socket)) socket.terminate();
      asked.add(socket);
      socket.ping();
    }
  }, HEARTBEAT_MS);
  heartbeat.unref();
  app.addHook('onClose', (_app, done) => {
    clearInterval(heartbeat);
    done();
  });
}

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
