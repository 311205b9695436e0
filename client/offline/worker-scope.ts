/** What of an event of a service worker is used here (the DOM types do not have it). */
interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}

/** The page asks for something. */
interface Fetching extends Extendable {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** What of a service worker's global scope is used here. */
export interface WorkerScope {
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install' | 'activate', act: (event: Extendable) => void): void;
  addEventListener(kind: 'fetch', act: (event: Fetching) => void): void;
}
