import type { FastifyInstance } from 'fastify';
import type { TSchema } from 'typebox';
import { AppendSchema, GreetingSchema } from '../../src/wire/flight.ts';
import type { Append, Greeting } from '../../src/wire/flight.ts';
import { problemsOf } from '../../src/wire/problems-of.ts';
import { problemsInAll } from '../../src/wire/whole-of.ts';
import { append, appendProblems, arrivalOf } from '../appending.ts';
import type { Followers } from '../follow.ts';
import { fieldRefusal, problemOf, refusal } from '../problems.ts';
import type { Records } from '../records.ts';
import { flightOf } from './flights.ts';

/** Close code: what was asked for cannot be done (RFC 6455, 7.4.1). */
const REFUSED = 1008;

/**
 * `WS /ws/flights/:id`: after a greeting `{"afterId": id | null}` the server sends each event, once, as
 * one message, in order of arrival. `{"events": [...]}` appends and is answered `{"added", "known"}`;
 * a message that is refused is answered `{"problem": {...}}`.
 */
export function followRoute(app: FastifyInstance, records: Records, followers: Followers): void {
  const schema = { hide: true };
  app.get<{ Params: { id: string } }>(
    '/ws/flights/:id',
    {
      schema,
      websocket: true,
      preValidation: ({ params, ws }, _reply, done) => {
        if (!ws) throw refusal(426, 'This is a WebSocket: connect with ws://.');
        flightOf(records, params.id);
        done();
      },
    },
    (socket, { params: { id } }) => {
      let isGreeted = false;
      const greet = (greeting: Greeting): void => {
        if (isGreeted) throw refusal(422, 'This socket follows already.');
        isGreeted = true;
        try {
          followers.follow(id, arrivalOf(records, id, greeting.afterId), socket);
        } catch (error) {
          // Whoever cannot be told where to go on would wait for ever: say why, and end.
          setImmediate(() => {
            socket.close(REFUSED);
          });
          throw error;
        }
      };
      socket.on('message', (data: Buffer, isBinary) => {
        try {
          const message = parsed(data, isBinary);
          if ('events' in message) {
            checkAppend(message);
            const { events } = message as Append;
            socket.send(JSON.stringify(append(records, followers, id, events)));
          } else {
            check(GreetingSchema, message);
            greet(message as Greeting);
          }
        } catch (error) {
          const problem = problemOf(error as Error);
          if (problem.status >= 500) console.error(`socket of flight ${id}:`, error);
          socket.send(JSON.stringify({ problem }));
        }
      });
    },
  );
}

function parsed(data: Buffer, isBinary: boolean): object {
  const message = isBinary ? null : fromJson(data.toString('utf8'));
  if (typeof message !== 'object' || message === null)
    throw refusal(400, 'The message is not a JSON object.');
  return message;
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function check(schema: TSchema, message: object): void {
  const problems = problemsOf(schema, message);
  if (problems.length > 0) throw fieldRefusal(problems);
}

function checkAppend(message: object): void {
  const problems = problemsInAll(AppendSchema, message, appendProblems);
  if (problems.length > 0) throw fieldRefusal(problems);
}
