import { existsSync } from 'node:fs';
import path from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { refusal } from './problems.ts';

/** Vite puts a hash of the content into these names, so what they hold never changes. */
const HASHED = /[\\/]assets[\\/][^\\/]+-[\w-]{8,}\.\w+(\.br|\.gz)?$/;

/**
 * Headers that say what a document may do, or how it is shown: a script, a style or a font is neither, and there
 * they weigh more than many of the files. A worker is one, so its file keeps them.
 */
const ONLY_FOR_DOCUMENTS = [
  'content-security-policy',
  'cross-origin-opener-policy',
  'origin-agent-cluster',
  'x-dns-prefetch-control',
  'x-download-options',
  'x-frame-options',
  'x-permitted-cross-domain-policies',
  'x-xss-protection',
];
const NO_DOCUMENT = /^\/assets\/(?![^/?]*worker)[^/?]+\.(js|css|woff2)(\?|$)/;

/** Serves the built page, with `index.html` for `/`; files compressed beforehand where there are any. */
export async function servePage(app: FastifyInstance, pageDir: string): Promise<void> {
  if (!existsSync(path.join(pageDir, 'index.html'))) {
    app.get('/', { schema: { hide: true } }, () => {
      throw refusal(404, 'The page has not been built. "npm start" builds and serves it.');
    });
    return;
  }
  app.addHook('onSend', (request, reply, _payload, done) => {
    if (reply.statusCode < 400 && NO_DOCUMENT.test(request.url))
      for (const name of ONLY_FOR_DOCUMENTS) reply.raw.removeHeader(name);
    done();
  });
  await app.register(fastifyStatic, {
    root: path.resolve(pageDir),
    preCompressed: true,
    cacheControl: false,
    dotfiles: 'ignore',
    schemaHide: true,
    setHeaders: (response, file) => {
      const isHashed = HASHED.test(file);
      response.setHeader(
        'cache-control',
        isHashed ? 'public, max-age=31536000, immutable' : 'no-cache',
      );
      response.setHeader('vary', 'accept-encoding');
    },
  });
}
