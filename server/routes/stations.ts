import type { IncomingMessage } from 'node:http';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { Type } from 'typebox';
import { decimalYear } from '../../src/earth/calendar-date.ts';
import { findStations, type StationQuery } from '../../src/station/library/find-stations.ts';
import { stationByHand } from '../../src/station/library/given-station.ts';
import { LONGEST_ID, stationDoubts } from '../../src/station/library/library-station.ts';
import {
  FoundStationsSchema,
  GivenStationSchema,
  ImportedSchema,
  LibraryStationSchema,
  StationQuerySchema,
} from '../../src/wire/library-station.ts';
import type { GivenStation, StationQueryText } from '../../src/wire/library-station.ts';
import { fieldRefusal, refusal } from '../problems.ts';
import { checkType, namingTypes } from '../media-type.ts';
import { readBody } from '../read-body.ts';
import { busy, openStationImports } from '../station-import.ts';
import type { StationRecords } from '../station-records.ts';
import { refusals } from './refusals.ts';

const DEFAULT_LIMIT = 50;

/** The world's navaids take 2 MB; ten times that is a mistake. */
const MOST_CSV_MB = 24;
const CSV_TYPES = ['text/csv'];
const MOST_CSV_BYTES = MOST_CSV_MB * 1024 * 1024;

/** Nothing that cannot be seen: no control codes, no blank at either end. */
const AN_ID = `^(?!\\s)[^\\u0000-\\u001f\\u007f]{1,${LONGEST_ID}}(?<!\\s)$`;

const AtSchema = Type.Object({
  id: Type.String({
    pattern: AN_ID,
    description: `an id of 1 to ${LONGEST_ID} letters or figures, as GET /api/stations gives them`,
  }),
});

/** `POST /api/stations/import`, `GET /api/stations`, `PUT` and `DELETE /api/stations/:id`. */
export async function stationRoutes(
  app: FastifyInstance,
  stations: StationRecords,
  now: () => number,
): Promise<void> {
  const year = (): number => {
    const today = decimalYear(new Date(now()).toISOString().slice(0, 10));
    return today.ok ? today.value : Number.NaN;
  };
  await importRoute(app, stations, year);
  searchRoute(app, stations);
  changeRoutes(app, stations, year);
}

/** In a scope of its own: nowhere else is CSV taken. */
async function importRoute(
  app: FastifyInstance,
  stations: StationRecords,
  year: () => number,
): Promise<void> {
  const imports = openStationImports(stations);
  app.addHook('preClose', () => imports.close());
  await app.register((scope, _options, done) => {
    namingTypes(scope, CSV_TYPES);
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser('*', async (request: FastifyRequest, body: IncomingMessage) => {
      checkType(request.headers['content-type'], CSV_TYPES);
      if (imports.isFull()) throw busy('Too many files are waiting. Send this one again later.');
      const csv = await readBody(body, MOST_CSV_BYTES);
      if (csv === null) throw tooLarge();
      return csv;
    });
    scope.post<{ Body: Uint8Array<ArrayBuffer> | undefined }>(
      '/api/stations/import',
      { schema: IMPORTING, validatorCompiler: () => (value: unknown) => ({ value }) },
      async ({ body, headers }, reply) => {
        checkType(headers['content-type'], CSV_TYPES);
        const csv = body ?? new Uint8Array(0);
        const told = await imports.take(csv, year(), () => reply.raw.destroyed);
        return reply.type('application/json').send(told);
      },
    );
    done();
  });
}

const IMPORTING = {
  summary: 'Take the stations of an open navaid CSV into the library',
  body: {
    description: `an open navaid CSV of at most ${MOST_CSV_MB} MB`,
    content: { 'text/csv': { schema: Type.String() } },
  },
  response: { 200: ImportedSchema, ...refusals(413, 415, 422, 503) },
};

function tooLarge(): Error {
  const most = `${MOST_CSV_MB} MB`;
  return refusal(413, `The file is larger than ${most}. Nothing of it was taken.`, [
    { field: 'body', expected: `at most ${most}`, got: 'more' },
  ]);
}

function searchRoute(app: FastifyInstance, stations: StationRecords): void {
  const schema = {
    summary: 'Stations by ident, name, frequency or distance; the nearest or the best fit first',
    querystring: StationQuerySchema,
    response: { 200: FoundStationsSchema, ...refusals(422) },
  };
  app.get<{ Querystring: StationQueryText }>('/api/stations', { schema }, ({ query }) => ({
    stations: findStations(stations.index(), queryOf(query)).map(({ station, distanceNm }) => ({
      ...station,
      ...(distanceNm === null ? {} : { distanceNm }),
      doubts: stationDoubts(station),
    })),
  }));
}

function queryOf(query: StationQueryText): StationQuery {
  const { q, nearLatitudeDeg, nearLongitudeDeg, withinNm, frequencyMhz } = query;
  const half =
    (nearLatitudeDeg === undefined) === (nearLongitudeDeg === undefined)
      ? withinNm !== undefined && nearLatitudeDeg === undefined
        ? 'nearLatitudeDeg'
        : null
      : nearLatitudeDeg === undefined
        ? 'nearLatitudeDeg'
        : 'nearLongitudeDeg';
  if (half !== null)
    throw fieldRefusal([
      { field: half, expected: 'latitude and longitude of the place together', got: 'nothing' },
    ]);
  return {
    limit: query.limit ?? DEFAULT_LIMIT,
    ...(q === undefined ? {} : { text: q }),
    ...(nearLatitudeDeg === undefined || nearLongitudeDeg === undefined
      ? {}
      : { near: { latitudeDeg: nearLatitudeDeg, longitudeDeg: nearLongitudeDeg } }),
    ...(withinNm === undefined ? {} : { withinNm }),
    ...(frequencyMhz === undefined ? {} : { frequencyMhz }),
  };
}

function changeRoutes(app: FastifyInstance, stations: StationRecords, year: () => number): void {
  const putting = {
    summary: 'Add a station by hand, or correct one; an import then leaves it alone',
    params: AtSchema,
    body: GivenStationSchema,
    response: {
      200: { ...LibraryStationSchema, description: 'corrected' },
      201: { ...LibraryStationSchema, description: 'added' },
      ...refusals(400, 413, 414, 415, 422),
    },
  };
  app.put<{ Params: { id: string }; Body: GivenStation }>(
    '/api/stations/:id',
    { schema: putting },
    ({ params, body }, reply) => {
      const station = stationByHand(params.id, body, year());
      if (!station.ok) throw fieldRefusal(station.problem);
      const isNew = !stations.all().has(params.id);
      stations.keep(station.value);
      return reply.code(isNew ? 201 : 200).send(station.value);
    },
  );
  const removing = {
    summary: 'Take a station out of the library',
    params: AtSchema,
    response: { 204: Type.Null({ description: 'it is gone' }), ...refusals(404, 414, 422) },
  };
  app.delete<{ Params: { id: string } }>(
    '/api/stations/:id',
    { schema: removing },
    ({ params }, reply) => {
      if (!stations.remove(params.id))
        throw refusal(404, `There is no station ${params.id.slice(0, 60)}.`);
      return reply.code(204).send();
    },
  );
}
