import type { FastifyInstance } from 'fastify';
import { Type } from 'typebox';
import { ulid } from 'ulid';
import { UlidSchema } from '../../src/wire/event.ts';
import { FlightSummarySchema, NewFlightSchema } from '../../src/wire/flight.ts';
import type { FlightSummary, NewFlight } from '../../src/wire/flight.ts';
import { flightCsv, flightGpx } from '../flight-files.ts';
import { refusal } from '../problems.ts';
import type { Records } from '../records.ts';
import { refusals } from './refusals.ts';

const FILE = /^(.+)\.(gpx|csv)$/;

const CreatedSchema = Type.Object({ id: UlidSchema }, { additionalProperties: false });

/** `POST /api/flights`, `GET /api/flights`, `GET /api/flights/:id`, `.gpx` and `.csv`. */
export function flightRoutes(app: FastifyInstance, records: Records, now: () => number): void {
  const creating = {
    summary: 'Begin the record of a flight',
    description:
      'A flight that was born on a device without network brings its own id; handing it in again is ' +
      'harmless (200 instead of 201, the first name stays).',
    body: NewFlightSchema,
    response: {
      200: { ...CreatedSchema, description: 'recorded before' },
      201: { ...CreatedSchema, description: 'recorded' },
      ...refusals(400, 413, 415, 422),
    },
  };
  app.post<{ Body: NewFlight }>('/api/flights', { schema: creating }, ({ body }, reply) => {
    const id = body.id ?? ulid(now());
    const isNew = records.createFlight(id, body.name, now());
    return reply
      .code(isNew ? 201 : 200)
      .header('location', `/api/flights/${id}`)
      .send({ id });
  });

  const listing = {
    summary: 'All flights, the newest first',
    response: {
      200: Type.Object(
        { flights: Type.Array(FlightSummarySchema) },
        { additionalProperties: false, description: 'the flights' },
      ),
    },
  };
  app.get('/api/flights', { schema: listing }, () => ({ flights: records.flights() }));

  const one = {
    summary: 'One flight; with .gpx or .csv after its id, as that file',
    params: Type.Object({ id: Type.String({ description: 'id of the flight' }) }),
    response: { 200: FlightSummarySchema, ...refusals(404) },
  };
  app.get<{ Params: { id: string } }>('/api/flights/:id', { schema: one }, ({ params }, reply) => {
    const [, id, form] = FILE.exec(params.id) ?? [];
    if (id === undefined || form === undefined) return flightOf(records, params.id);
    const { name } = flightOf(records, id);
    const events = records.inOrderAfter(id, 0);
    const text = form === 'gpx' ? flightGpx(name, events) : flightCsv(events);
    return reply
      .type(form === 'gpx' ? 'application/gpx+xml; charset=utf-8' : 'text/csv; charset=utf-8')
      .header('content-disposition', `attachment; filename="flight-${id}.${form}"`)
      .serializer(String)
      .send(text);
  });
}

/** The flight, or a refusal that there is none. */
export function flightOf(records: Records, id: string): FlightSummary {
  const flight = records.flight(id);
  if (flight === null) throw refusal(404, `There is no flight ${id.slice(0, 60)}.`);
  return flight;
}
