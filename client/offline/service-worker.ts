import type { WorkerScope } from './worker-scope.ts';

// Keeps the page on the device, so that it opens with the server gone. It never touches the interface
// (`/api`, `/ws`): flights have a log of their own. The large voice file is kept by the voice itself.

/** Put in by the build: the files that the page needs, large ones that are fetched on demand left out. */
declare const PAGE_FILES: readonly string[];
/** Put in by the build: changes with any file. */
declare const PAGE_EDITION: string;

const scope = globalThis as unknown as WorkerScope;

const PREFIX = 'spoken-radial.page.';
const EDITION = PREFIX + PAGE_EDITION;

/** A server that is there answers a page well within this; a dead radio link does not answer at all. */
const PATIENCE_MS = 2500;

async function install(): Promise<void> {
  const cache = await caches.open(EDITION);
  // These past the browser's own cache, which may hold older ones; the rest has hashed names.
  const fresh = ['./', './icon.svg'].map((file) => new Request(file, { cache: 'no-cache' }));
  await cache.addAll([...fresh, ...PAGE_FILES]);
  await scope.skipWaiting();
}

async function activate(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== EDITION);
  await Promise.all(old.map((name) => caches.delete(name)));
  await scope.clients.claim();
}

/** The page itself: from the server, so that a new edition shows at once; else as it was kept. */
async function page(request: Request): Promise<Response> {
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(PATIENCE_MS) });
    if (answer.ok) return answer;
    throw new Error(`the server answered ${answer.status}`);
  } catch (reason) {
    const kept = await caches.match('./');
    if (kept !== undefined) return kept;
    throw reason;
  }
}

/** A file of the page: its name changes with its content, so what is kept is right. */
async function asset(request: Request): Promise<Response> {
  const kept = await caches.match(request);
  if (kept !== undefined) return kept;
  const answer = await fetch(request);
  if (answer.ok) {
    const cache = await caches.open(EDITION);
    await cache.put(request, answer.clone());
  }
  return answer;
}

scope.addEventListener('install', (event) => {
  event.waitUntil(install());
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(activate());
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  if (pathname.startsWith('/api/') || pathname.startsWith('/ws/')) return;
  if (pathname.endsWith('.wasm')) return;
  event.respondWith(request.mode === 'navigate' ? page(request) : asset(request));
});
