import type { IncomingMessage } from 'node:http';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { checkType, namingTypes } from '../media-type.ts';
import { refusal } from '../problems.ts';
import { readBody } from '../read-body.ts';
import { refusals } from './refusals.ts';

const TYPES = ['audio/wav', 'audio/x-wav', 'audio/wave', 'audio/vnd.wave'];

/** One utterance: a minute of 16 bits at 48 kHz is far more than anybody says. */
const MOST_BYTES = 6_000_000;

/** `POST /api/hear`: no recogniser of speech is built into this server, so each call is refused with what to do. */
export async function hearRoute(app: FastifyInstance): Promise<void> {
  // In a scope of its own, because the sound must be taken in before it can be refused.
  await app.register((scope, _options, done) => {
    namingTypes(scope, TYPES);
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser('*', async (request: FastifyRequest, body: IncomingMessage) => {
      checkType(request.headers['content-type'], TYPES);
      if ((await readBody(body, MOST_BYTES)) === null)
        throw refusal(413, 'The sound is larger than 6 MB. One reading is a few seconds.', [
          { field: 'body', expected: 'at most 6 MB', got: 'more' },
        ]);
      return null;
    });
    const schema = {
      summary: 'What was said in one utterance',
      consumes: TYPES,
      response: refusals(413, 415, 503),
    };
    scope.post('/api/hear', { schema }, ({ headers }) => {
      checkType(headers['content-type'], TYPES);
      throw refusal(
        503,
        'No recogniser of speech is built into this server. Type or tap the reading.',
        [{ field: 'body', expected: 'a reading typed or tapped', got: 'sound' }],
      );
    });
    done();
  });
}
