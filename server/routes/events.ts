import type { FastifyInstance } from 'fastify';
import { Type } from 'typebox';
import { UlidSchema } from '../../src/wire/event.ts';
import { AppendedSchema, AppendSchema, EventsSchema } from '../../src/wire/flight.ts';
import type { Append } from '../../src/wire/flight.ts';
import { append, appendProblems, arrivalOf } from '../appending.ts';
import type { Followers } from '../follow.ts';
import type { Records } from '../records.ts';
import { checkingAll } from '../validation.ts';
import { flightOf } from './flights.ts';
import { refusals } from './refusals.ts';

const params = Type.Object({ id: Type.String({ description: 'id of the flight' }) });

/** `POST /api/flights/:id/events`, `GET /api/flights/:id/events`. */
export function eventRoutes(app: FastifyInstance, records: Records, followers: Followers): void {
  const appending = {
    summary: 'Append events to a flight',
    description:
      'All of them or none. Answered when they are on the disk. An event that is recorded already ' +
      'counts as known; the same id with other content is refused.',
    params,
    body: AppendSchema,
    response: { 200: AppendedSchema, ...refusals(400, 404, 413, 415, 422) },
  };
  app.post<{ Params: { id: string }; Body: Append }>(
    '/api/flights/:id/events',
    { schema: appending, validatorCompiler: checkingAll(appendProblems) },
    ({ params: { id }, body }) => {
      flightOf(records, id);
      return append(records, followers, id, body.events);
    },
  );

  const reading = {
    summary: 'The events of a flight, in order of time, then id',
    description:
      'With afterId only those that arrived at the server after that event, whatever their time: an ' +
      'event of an earlier moment that comes in late from a second device is among them.',
    params,
    querystring: Type.Object(
      { afterId: Type.Optional(UlidSchema) },
      { additionalProperties: false, description: 'which events' },
    ),
    response: { 200: EventsSchema, ...refusals(404, 422) },
  };
  app.get<{ Params: { id: string }; Querystring: { afterId?: string } }>(
    '/api/flights/:id/events',
    { schema: reading },
    ({ params: { id }, query }) => {
      flightOf(records, id);
      const arrival = arrivalOf(records, id, query.afterId ?? null);
      return { events: records.inOrderAfter(id, arrival) };
    },
  );
}
