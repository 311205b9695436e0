import { signal, type ReadonlySignal } from '@preact/signals';
import type { FlightEvent } from '../../src/flight/event.ts';
import { follow, getEvents, postEvents, postFlight, Refused } from './server-calls.ts';

/** Where everything recorded so far is safe. */
export type SyncState = 'saved-here' | 'saved-on-server' | 'catching-up';

/** What the link needs to know of the flight that it keeps in step. */
export interface Linked {
  readonly flightId: string;
  log(): readonly FlightEvent[];
  name(): string;
  /** Takes what came from elsewhere; settles when it is on disk here. */
  receive(events: readonly FlightEvent[]): Promise<void>;
}

/** The link of one flight to the server: it works when it can and is never waited for. */
export interface ServerLink {
  readonly syncState: ReadonlySignal<SyncState>;
  readonly problem: ReadonlySignal<string | null>;
  /** There is something new in the log. */
  send(): void;
  close(): void;
}

const FIRST_DELAY_MS = 500;
const LONGEST_DELAY_MS = 10_000;
/** A dead radio link closes no socket: without word for this long, the server is asked. */
const HEARTBEAT_MS = 15_000;
const MOST_AT_ONCE = 200;

interface Session {
  readonly known: Set<string>;
  readonly refused: Set<string>;
  /** Last event in the server's own order. */
  lastId: string | null;
}

async function handOver(
  linked: Linked,
  session: Session,
  batch: readonly FlightEvent[],
): Promise<string | null> {
  try {
    await postEvents(linked.flightId, batch);
    batch.forEach((event) => session.known.add(event.id));
    return null;
  } catch (reason) {
    if (!(reason instanceof Refused) || reason.status === 404) throw reason;
    const [only] = batch;
    if (batch.length === 1 && only !== undefined) {
      session.refused.add(only.id);
      return reason.message;
    }
  }
  // All or none: one event that the server does not like must not keep the others from it.
  let problem: string | null = null;
  for (const event of batch) problem = (await handOver(linked, session, [event])) ?? problem;
  return problem;
}

/** Makes the flight known to a server that does not have it, and fetches what the server has of it. */
async function catchUp(linked: Linked, session: Session): Promise<void> {
  // Always, not only after a 404: browsers put each refused call before the pilot as an error.
  await postFlight(linked.flightId, linked.name());
  await noteTheirs(linked, session, await getEvents(linked.flightId, null));
}

async function noteTheirs(
  linked: Linked,
  session: Session,
  theirs: readonly FlightEvent[],
): Promise<void> {
  if (theirs.length === 0) return;
  await linked.receive(theirs);
  theirs.forEach((event) => session.known.add(event.id));
  session.lastId = theirs.at(-1)?.id ?? session.lastId;
}

/**
 * Keeps a flight and the server's copy of it in step, for as long as it is open.
 *
 * Each time the server answers, both logs are compared whole and each side gets what it lacks (a log is
 * a few hundred short lines): whatever either side lost or missed meanwhile, the union is complete again.
 * Then the socket tells of new events; when it breaks, the link tries again with a growing delay.
 */
export function linkToServer(linked: Linked): ServerLink {
  const syncState = signal<SyncState>('saved-here');
  const problem = signal<string | null>(null);
  const closing = new AbortController();
  let wake: () => void = () => undefined;
  let sendNow: () => void = () => undefined;

  async function sendMissing(session: Session): Promise<void> {
    for (;;) {
      const missing = linked
        .log()
        .filter((event) => !session.known.has(event.id) && !session.refused.has(event.id))
        .slice(0, MOST_AT_ONCE);
      if (missing.length === 0) break;
      syncState.value = 'catching-up';
      problem.value = (await handOver(linked, session, missing)) ?? problem.value;
    }
    syncState.value = session.refused.size === 0 ? 'saved-on-server' : 'saved-here';
  }

  /** From the first answer of the server until it is gone: then it rejects. */
  async function attend(reached: () => void): Promise<void> {
    const session: Session = { known: new Set(), refused: new Set(), lastId: null };
    await catchUp(linked, session);
    reached();
    await sendMissing(session);
    await new Promise<never>((_resolve, lose) => {
      const ended = new AbortController();
      const end = (reason: unknown): void => {
        ended.abort();
        lose(reason instanceof Error ? reason : new Error('connection lost'));
      };
      const socket = follow(linked.flightId, session.lastId, (event) => {
        noteTheirs(linked, session, [event]).catch(end);
      });
      socket.onclose = end;
      let sending: Promise<void> = Promise.resolve();
      sendNow = (): void => {
        sending = sending.then(() => sendMissing(session));
        sending.catch(end);
      };
      const heartbeat = setInterval(() => {
        getEvents(linked.flightId, session.lastId)
          .then((theirs) => noteTheirs(linked, session, theirs))
          .catch(end);
      }, HEARTBEAT_MS);
      closing.signal.addEventListener('abort', end, { signal: ended.signal });
      ended.signal.addEventListener('abort', () => {
        clearInterval(heartbeat);
        sendNow = (): void => undefined;
        socket.onclose = null;
        socket.close();
      });
      // What was appended while the logs were compared.
      sendNow();
    });
  }

  function pause(ms: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, ms);
      wake = (): void => {
        clearTimeout(timer);
        resolve();
      };
    });
  }

  async function keepTrying(): Promise<void> {
    let delayMs = FIRST_DELAY_MS;
    const reached = (): void => {
      delayMs = FIRST_DELAY_MS;
    };
    while (!closing.signal.aborted) {
      await attend(reached).catch(() => undefined);
      syncState.value = 'saved-here';
      await pause(delayMs);
      delayMs = Math.min(delayMs * 2, LONGEST_DELAY_MS);
    }
  }

  const retry = (): void => {
    wake();
  };
  addEventListener('online', retry, { signal: closing.signal });
  document.addEventListener('visibilitychange', retry, { signal: closing.signal });
  void keepTrying();

  return {
    syncState,
    problem,
    send: () => {
      // Out of reach, the event is on this device only; within reach, it is on its way.
      if (syncState.peek() === 'saved-on-server') syncState.value = 'catching-up';
      sendNow();
    },
    close: () => {
      closing.abort();
      wake();
    },
  };
}
