import type { IncomingMessage } from 'node:http';

/**
 * Reads a body of at most so many bytes into memory of its own; null: it is larger.
 *
 * What comes after the most is dropped as it comes in, because a connection that is broken off while the other
 * end still sends loses the refusal; but not for ever.
 */
export async function readBody(
  body: IncomingMessage,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | null> {
  if (Number(body.headers['content-length'] ?? 0) > most) return null;
  let chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of body as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length <= most) chunks.push(chunk);
    else chunks = [];
    if (length > 4 * most) return null;
  }
  if (length > most) return null;
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
