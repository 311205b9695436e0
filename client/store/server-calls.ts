import type { FlightEvent } from '../../src/flight/event.ts';

/** The server does not answer, or something else than our server does. */
class ServerGone extends Error {}

/** The server answers and refuses; the message is its own sentence. */
export class Refused extends Error {
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

const PATIENCE_MS = 8000;

const KINDS: readonly string[] = [
  'plan',
  'reading',
  'reading-corrected',
  'taken-back',
  'check',
  'ident',
  'leg-started',
  'note',
  'finished',
] satisfies readonly FlightEvent['kind'][];

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/**
 * True for what the server sends as an event. The server has checked the fields when it took them;
 * here it is only made sure that an event of a newer edition does not stop this page.
 */
function isEvent(value: unknown): value is FlightEvent {
  if (!isRecord(value)) return false;
  const { id, atMs, kind } = value;
  return (
    typeof id === 'string' &&
    typeof atMs === 'number' &&
    typeof kind === 'string' &&
    KINDS.includes(kind)
  );
}

function sentenceOf(body: unknown, status: number): string {
  if (!isRecord(body)) return `The server refused (${status}).`;
  const { errors, detail, title } = body;
  const first: unknown = Array.isArray(errors) ? errors[0] : undefined;
  if (isRecord(first)) {
    return `${String(first['field'])}: expected ${String(first['expected'])}, got ${String(first['got'])}`;
  }
  if (typeof detail === 'string') return detail;
  return typeof title === 'string' ? title : `The server refused (${status}).`;
}

async function call(path: string, request: RequestInit = {}): Promise<unknown> {
  let answer: Response;
  try {
    answer = await fetch(path, { ...request, signal: AbortSignal.timeout(PATIENCE_MS) });
    // A page served by something else answers everything with HTML: that is not our server.
    if (!(answer.headers.get('content-type') ?? '').includes('json')) throw new Error('not JSON');
  } catch (reason) {
    throw new ServerGone('The server does not answer.', { cause: reason });
  }
  const body: unknown = await answer.json().catch(() => null);
  if (answer.ok) return body;
  if (answer.status === 429 || answer.status >= 500) {
    throw new ServerGone(`The server cannot answer now (${answer.status}).`);
  }
  throw new Refused(answer.status, sentenceOf(body, answer.status));
}

const post = (path: string, body: unknown): Promise<unknown> =>
  call(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

const flightPath = (id: string): string => `/api/flights/${encodeURIComponent(id)}`;

/** Makes the flight known to the server under its own id; harmless when the server has it. */
export async function postFlight(id: string, name: string): Promise<void> {
  await post('/api/flights', { id, name });
}

/** Hands events over: all or none are taken, and the answer comes when they are durable. */
export async function postEvents(id: string, events: readonly FlightEvent[]): Promise<void> {
  await post(`${flightPath(id)}/events`, { events });
}

/** The server's log of a flight, in its order; `afterId` leaves out what came up to that event. */
export async function getEvents(
  id: string,
  afterId: string | null,
): Promise<readonly FlightEvent[]> {
  const query = afterId === null ? '' : `?afterId=${encodeURIComponent(afterId)}`;
  const body = await call(`${flightPath(id)}/events${query}`);
  const events: unknown = isRecord(body) ? body['events'] : null;
  return Array.isArray(events) ? events.filter(isEvent) : [];
}

/** A flight in the server's list. */
export interface ServerFlight {
  readonly id: string;
  readonly name: string;
}

/** The flights that the server has; none when it does not answer. */
export async function getFlights(): Promise<readonly ServerFlight[]> {
  let body: unknown;
  try {
    body = await call('/api/flights');
  } catch {
    return [];
  }
  const rows: unknown = isRecord(body) && 'flights' in body ? body['flights'] : body;
  if (!Array.isArray(rows)) return [];
  return rows
    .filter(isRecord)
    .flatMap(({ id, name }) =>
      typeof id === 'string' && typeof name === 'string' ? [{ id, name }] : [],
    );
}

/** Opens the socket on which the server tells of each event after `afterId`. */
export function follow(
  id: string,
  afterId: string | null,
  receive: (event: FlightEvent) => void,
): WebSocket {
  const scheme = location.protocol === 'https:' ? 'wss' : 'ws';
  const socket = new WebSocket(`${scheme}://${location.host}/ws/flights/${encodeURIComponent(id)}`);
  socket.onopen = (): void => {
    socket.send(JSON.stringify({ afterId }));
  };
  socket.onmessage = (message: MessageEvent<unknown>): void => {
    if (typeof message.data !== 'string') return;
    const event: unknown = JSON.parse(message.data);
    if (isEvent(event)) receive(event);
  };
  return socket;
}
