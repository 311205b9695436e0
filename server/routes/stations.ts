import type { FastifyInstance } from 'fastify';
import { Type } from 'typebox';
import { decimalYear } from '../../src/earth/calendar-date.ts';
import { findStations, type StationQuery } from '../../src/station/library/find-stations.ts';
import { stationByHand } from '../../src/station/library/given-station.ts';
import { stationDoubts } from '../../src/station/library/library-station.ts';
import {
  FoundStationsSchema,
  GivenStationSchema,
  ImportedSchema,
  LibraryStationSchema,
  StationQuerySchema,
} from '../../src/wire/library-station.ts';
import type { GivenStation, StationQueryText } from '../../src/wire/library-station.ts';
import { fieldRefusal, refusal } from '../problems.ts';
import { MOST_CSV_BYTES, readNavaids, tooLarge } from '../read-navaids.ts';
import type { StationRecords } from '../station-records.ts';
import { refusals } from './refusals.ts';

const DEFAULT_LIMIT = 50;

const AtSchema = Type.Object({
  id: Type.String({ minLength: 1, maxLength: 64, description: 'id of the station' }),
});

/** `POST /api/stations/import`, `GET /api/stations`, `PUT` and `DELETE /api/stations/:id`. */
export function stationRoutes(
  app: FastifyInstance,
  stations: StationRecords,
  now: () => number,
): void {
  const year = (): number => {
    const today = decimalYear(new Date(now()).toISOString().slice(0, 10));
    return today.ok ? today.value : Number.NaN;
  };
  // The file is read as it comes in: a world of navaids need not stand in memory as one text.
  app.addContentTypeParser('text/csv', { bodyLimit: MOST_CSV_BYTES }, (request, body, done) => {
    const isTooLarge = Number(request.headers['content-length'] ?? 0) > MOST_CSV_BYTES;
    if (isTooLarge) done(tooLarge());
    else done(null, body);
  });
  importRoute(app, stations, year);
  searchRoute(app, stations);
  changeRoutes(app, stations, year);
}

function importRoute(app: FastifyInstance, stations: StationRecords, year: () => number): void {
  const schema = {
    summary: 'Take the stations of an open navaid CSV into the library',
    consumes: ['text/csv'],
    response: { 200: ImportedSchema, ...refusals(400, 413, 415, 422) },
  };
  app.post<{ Body: NodeJS.ReadableStream | undefined }>(
    '/api/stations/import',
    { schema, bodyLimit: MOST_CSV_BYTES },
    async ({ body, headers }) => {
      if (headers['content-type']?.split(';')[0]?.trim().toLowerCase() !== 'text/csv' || !body)
        throw refusal(415, 'The body must be text/csv.', [
          {
            field: 'content-type',
            expected: 'text/csv',
            got: headers['content-type'] ?? 'nothing',
          },
        ]);
      const merge = await readNavaids(body, stations.all(), year());
      stations.keep(merge.changes);
      const { added, updated, skipped } = merge;
      return { added, updated, skipped };
    },
  );
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
      ...refusals(400, 413, 415, 422),
    },
  };
  app.put<{ Params: { id: string }; Body: GivenStation }>(
    '/api/stations/:id',
    { schema: putting },
    ({ params, body }, reply) => {
      const station = stationByHand(params.id, body, year());
      if (!station.ok) throw fieldRefusal(station.problem);
      const isNew = !stations.all().has(params.id);
      stations.keep([station.value]);
      return reply.code(isNew ? 201 : 200).send(station.value);
    },
  );
  const removing = {
    summary: 'Take a station out of the library',
    params: AtSchema,
    response: { 204: Type.Null({ description: 'it is gone' }), ...refusals(404) },
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
