import type { FastifyInstance } from 'fastify';
import { Type } from 'typebox';
import { identWav, readIdentRequest } from '../../src/ident/ident-request.ts';
import { IdentQuerySchema } from '../../src/wire/ident-query.ts';
import type { IdentQuery } from '../../src/wire/ident-query.ts';
import { fieldRefusal, refusal } from '../problems.ts';
import { refusals } from './refusals.ts';

const FILE = /^([^.]+)\.wav$/;

/** `GET /api/ident/QEV.wav`: the ident as it is keyed, for the ear. */
export function identRoute(app: FastifyInstance): void {
  const schema = {
    summary: 'The Morse ident of a station as sound',
    params: Type.Object({ file: Type.String({ description: 'the ident and .wav' }) }),
    querystring: IdentQuerySchema,
    response: {
      200: {
        description: 'mono, 16 bit',
        content: { 'audio/wav': { schema: Type.String({ format: 'binary' }) } },
      },
      ...refusals(404, 422),
    },
  };
  app.get<{ Params: { file: string }; Querystring: IdentQuery }>(
    '/api/ident/:file',
    { schema },
    ({ params, query }, reply) => {
      const ident = FILE.exec(params.file)?.[1];
      if (ident === undefined) throw refusal(404, 'An ident is asked for as /api/ident/QEV.wav.');
      const request = readIdentRequest(ident, query);
      if (!request.ok) throw fieldRefusal(request.problem);
      return reply
        .type('audio/wav')
        .header('cache-control', 'private, max-age=3600')
        .send(Buffer.from(identWav(request.value).buffer));
    },
  );
}
