/** Where large files that are fetched once are kept; the service worker leaves this one alone. */
const KEPT = 'spoken-radial.voice';

/** The store is missing where the page did not come over a secure connection: then nothing is kept. */
async function kept(): Promise<Cache | null> {
  return 'caches' in globalThis ? caches.open(KEPT).catch(() => null) : null;
}

/** Takes older editions of the same file out of the store. */
async function sweep(store: Cache, url: string): Promise<void> {
  for (const request of await store.keys()) {
    if (new URL(request.url).pathname !== new URL(url, location.href).pathname) {
      await store.delete(request);
    }
  }
}

/**
 * Fetches a large file once: from the store on this device, else from the server, with its progress
 * (0 to 1; `expectedBytes` stands in where the server does not tell the length).
 */
export async function fetchKept(
  url: string,
  expectedBytes: number,
  progress: (fraction: number) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  const store = await kept();
  const found = await store?.match(url);
  if (found !== undefined) return new Uint8Array(await found.arrayBuffer());
  const answer = await fetch(url);
  if (!answer.ok || answer.body === null) throw new Error(`the server answered ${answer.status}`);
  const bytes = await readWhole(answer.body, expectedBytes, progress);
  if (store !== null) {
    const headers = { 'content-type': 'application/wasm' };
    // A full disk keeps the voice from being kept, not from speaking.
    await store.put(url, new Response(bytes, { headers })).catch(() => undefined);
    await sweep(store, url).catch(() => undefined);
  }
  return bytes;
}

async function readWhole(
  body: ReadableStream<Uint8Array>,
  expectedBytes: number,
  progress: (fraction: number) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    length += value.length;
    progress(Math.min(1, length / expectedBytes));
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
