import type { FastifyInstance } from 'fastify';
import { refusal } from './problems.ts';

interface Known {
  readonly method: string;
  readonly path: RegExp;
}

/**
 * Answers what no route answers: 405 with `Allow` where the path is one of the interface's and only the
 * method is not, else 404. Call it before the routes are added: it keeps a list of them.
 */
export function answerMissing(app: FastifyInstance): void {
  const known: Known[] = [];
  app.addHook('onRoute', ({ method, url }) => {
    if (url.includes('*')) return;
    const pattern = url
      .split('/')
      .map((part) => (part.startsWith(':') ? '[^/]+' : part.replaceAll('.', '\\.')))
      .join('/');
    for (const each of [method].flat()) known.push({ method: each, path: RegExp(`^${pattern}$`) });
  });
  app.setNotFoundHandler((request, reply) => {
    const path = request.url.split('?', 1)[0] ?? '';
    const methods = known.filter((each) => each.path.test(path)).map((each) => each.method);
    if (methods.length === 0) throw refusal(404, `There is nothing at ${path.slice(0, 200)}.`);
    const allowed = [...new Set(methods)].join(', ');
    reply.header('allow', allowed);
    throw refusal(405, `${request.method} is not possible here, only ${allowed}.`);
  });
}
