import type { IncomingMessage } from 'node:http';
import type { FastifyInstance, FastifyReply, FastifyRequest, FastifySchemaCompiler } from 'fastify';
import { Type } from 'typebox';
import type { TSchema } from 'typebox';
import {
  ConfirmedIdentSchema,
  ConfirmQuerySchema,
  confirmedIdent,
  DecodedIdentSchema,
  DecodeQuerySchema,
  decodedIdent,
  rivalsIn,
} from '../../src/wire/ident-heard.ts';
import type { ConfirmQuery, DecodeQuery } from '../../src/wire/ident-heard.ts';
import type { Heard, Hearing } from '../hearing.ts';
import { busy, openHearingPool } from '../hearing-pool.ts';
import type { HearingPool } from '../hearing-pool.ts';
import { checkType, namingTypes } from '../media-type.ts';
import { fieldRefusal, refusal } from '../problems.ts';
import { readBody } from '../read-body.ts';
import { checkBySchema } from '../validation.ts';
import { refusals } from './refusals.ts';

const MOST_MB = 64;

/** As a browser, an editor or a script calls a WAV file. */
const TYPES = [
  'audio/wav',
  'audio/x-wav',
  'audio/wave',
  'audio/vnd.wave',
  'application/octet-stream',
];

type Wav = Uint8Array<ArrayBuffer>;

/** `POST /api/ident/decode` and `POST /api/ident/confirm?expected=QEV`: a recording is listened to. */
export async function identHeardRoutes(app: FastifyInstance): Promise<void> {
  const pool = openHearingPool();
  app.addHook('preClose', () => pool.close());
  // In a scope of its own: nowhere else is sound taken.
  await app.register((scope, _options, done) => {
    takeWavs(scope, pool);
    decodeRoute(scope, pool);
    confirmRoute(scope, pool);
    done();
  });
}

function takeWavs(scope: FastifyInstance, pool: HearingPool): void {
  namingTypes(scope, TYPES);
  scope.removeAllContentTypeParsers();
  scope.addContentTypeParser('*', async (request: FastifyRequest, body: IncomingMessage) => {
    checkType(request.headers['content-type'], TYPES);
    if (pool.isFull()) throw busy('Too many recordings are waiting. Send this one again later.');
    const wav = await readBody(body, MOST_MB * 1_000_000);
    if (wav === null) throw tooLarge();
    return wav;
  });
}

function tooLarge(): Error {
  return refusal(413, `The recording is larger than ${MOST_MB} MB. A minute is enough.`, [
    { field: 'body', expected: `at most ${MOST_MB} MB`, got: 'more' },
  ]);
}

/** The body is judged by those who read it. */
const validatorCompiler: FastifySchemaCompiler<TSchema> = (route) =>
  route.httpPart === 'body' ? (value: unknown) => ({ value }) : checkBySchema(route);

const body = {
  description: `a WAV file of at most ${MOST_MB} MB and 5 minutes`,
  content: { 'audio/wav': { schema: Type.String({ format: 'binary' }) } },
};

function decodeRoute(scope: FastifyInstance, pool: HearingPool): void {
  const schema = {
    summary: 'Which ident is keyed in a recording',
    querystring: DecodeQuerySchema,
    body,
    response: { 200: DecodedIdentSchema, ...refusals(413, 415, 422, 503) },
  };
  scope.post<{ Body: Wav | undefined; Querystring: DecodeQuery }>(
    '/api/ident/decode',
    { schema, validatorCompiler },
    async ({ body: wav, query, headers }, reply) => {
      checkType(headers['content-type'], TYPES);
      const { rivals } = query;
      const hearing = { wav, expected: null, known: rivalsIn(rivals) };
      const answer = await heardIn(pool, hearing, reply);
      return answer.kind === 'decoded' ? decodedIdent(answer.heard) : null;
    },
  );
}

function confirmRoute(scope: FastifyInstance, pool: HearingPool): void {
  const schema = {
    summary: 'Whether the ident in a recording is the expected one',
    querystring: ConfirmQuerySchema,
    body,
    response: { 200: ConfirmedIdentSchema, ...refusals(413, 415, 422, 503) },
  };
  scope.post<{ Body: Wav | undefined; Querystring: ConfirmQuery }>(
    '/api/ident/confirm',
    { schema, validatorCompiler },
    async ({ body: wav, query, headers }, reply) => {
      checkType(headers['content-type'], TYPES);
      const { expected, rivals } = query;
      const hearing = { wav, expected: expected.toUpperCase(), known: rivalsIn(rivals) };
      const answer = await heardIn(pool, hearing, reply);
      return answer.kind === 'confirmed' ? confirmedIdent(answer.confirmation) : null;
    },
  );
}

async function heardIn(
  pool: HearingPool,
  { wav, ...hearing }: Omit<Hearing, 'wav'> & { readonly wav: Wav | undefined },
  { raw }: FastifyReply,
): Promise<Extract<Heard, { ok: true }>['value']> {
  const given = { ...hearing, wav: wav ?? new Uint8Array(0) };
  const heard = await pool.hear(given, () => raw.destroyed);
  if (!heard.ok) throw fieldRefusal(heard.problem);
  return heard.value;
}
