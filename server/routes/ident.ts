import type { FastifyInstance } from 'fastify';
import { Type } from 'typebox';
import { IDENT_LIMITS, LONGEST_IDENT_SOUND_S } from '../../src/ident/limits.ts';
import { keyedSamples } from '../../src/ident/synthesis.ts';
import { repeatedTimeline, timelineLengthS } from '../../src/ident/timeline.ts';
import { writeWav } from '../../src/ident/wav.ts';
import { IdentQuerySchema } from '../../src/wire/ident-query.ts';
import type { IdentQuery } from '../../src/wire/ident-query.ts';
import { fieldRefusal, refusal } from '../problems.ts';
import { refusals } from './refusals.ts';

const FILE = /^([^.]+)\.wav$/;
const IDENT = /^[A-Z0-9]{1,4}$/;

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
      const ident = FILE.exec(params.file)?.[1]?.toUpperCase();
      if (ident === undefined) throw refusal(404, 'An ident is asked for as /api/ident/QEV.wav.');
      if (!IDENT.test(ident))
        throw fieldRefusal([
          { field: 'ident', expected: '1 to 4 letters or figures', got: `"${ident.slice(0, 60)}"` },
        ]);
      return reply
        .type('audio/wav')
        .header('cache-control', 'private, max-age=3600')
        .send(soundOf(ident, query));
    },
  );
}

function soundOf(ident: string, query: IdentQuery): Buffer {
  const sampleRateHz = query.sampleRateHz ?? IDENT_LIMITS.sampleRateHz.usual;
  const marks = repeatedTimeline(ident, query);
  const lengthS = timelineLengthS(marks);
  if (lengthS > LONGEST_IDENT_SOUND_S)
    throw fieldRefusal([
      {
        field: 'repeats',
        expected: `a sound of at most ${LONGEST_IDENT_SOUND_S} seconds`,
        got: `${Math.round(lengthS)} seconds`,
      },
    ]);
  return Buffer.from(writeWav(keyedSamples(marks, { ...query, sampleRateHz }), sampleRateHz));
}
