import type { WebSocket } from '@fastify/websocket';
import type { Records } from './records.ts';

/** Those who follow flights. */
export interface Followers {
  /** From now on this socket gets each event that arrived after a place, once, in order of arrival. */
  readonly follow: (flightId: string, arrival: number, socket: WebSocket) => void;
  /** Something was appended to this flight. */
  readonly wake: (flightId: string) => void;
}

interface Follower {
  readonly socket: WebSocket;
  /** Place of the last event that was sent. */
  arrival: number;
  isBusy: boolean;
}

const BATCH = 200;

/** A follower that has this much still to be sent gets no more until that is gone. */
const MOST_BUFFERED_BYTES = 1_000_000;

/**
 * Sends appended events to the sockets that follow.
 *
 * There is no difference between replay and live: a follower is a place in the order of arrival, and
 * whenever it is woken it is sent what lies beyond that place. So nothing is sent twice and nothing
 * falls between the two, and a slow line makes the server wait, not grow.
 */
export function followersOf(records: Records): Followers {
  const byFlight = new Map<string, Set<Follower>>();

  const send = (flightId: string, follower: Follower): void => {
    const { socket } = follower;
    if (follower.isBusy || socket.readyState !== socket.OPEN) return;
    const rows = records.arrivedAfter(flightId, follower.arrival, BATCH);
    const last = rows.at(-1);
    if (last === undefined) return;
    follower.isBusy = true;
    const goOn = (): void => {
      follower.isBusy = false;
      send(flightId, follower);
    };
    for (const { arrival, body } of rows) {
      follower.arrival = arrival;
      const isLast = arrival === last.arrival;
      const mustWait = isLast && socket.bufferedAmount > MOST_BUFFERED_BYTES;
      if (mustWait) socket.send(body, goOn);
      else {
        socket.send(body);
        if (isLast) setImmediate(goOn);
      }
    }
  };

  return {
    follow: (flightId, arrival, socket) => {
      const follower: Follower = { socket, arrival, isBusy: false };
      const followers = byFlight.get(flightId) ?? new Set();
      byFlight.set(flightId, followers.add(follower));
      socket.once('close', () => {
        followers.delete(follower);
        if (followers.size === 0 && byFlight.get(flightId) === followers) byFlight.delete(flightId);
      });
      send(flightId, follower);
    },
    wake: (flightId) => {
      for (const follower of byFlight.get(flightId) ?? []) send(flightId, follower);
    },
  };
}
