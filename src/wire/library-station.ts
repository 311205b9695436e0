import { Type } from 'typebox';
import type { Static } from 'typebox';
import type { LibraryStation } from '../station/library/library-station.ts';
import type { ServiceClass } from '../station/library/service-volume.ts';
import { heldTo } from './held.ts';
import { StationSchema } from './station.ts';

const CLASSES = ['T', 'L', 'H', 'VL', 'VH'] as const satisfies readonly ServiceClass[];

const { ident, latitudeDeg, longitudeDeg, elevationFt, declinationDegEast, hasDme, name, dme } =
  StationSchema.properties;
const frequencyMhz = Type.Number({ description: 'a frequency from 108.00 to 117.95 MHz' });
/** What a station was built to serve, as it crosses the wire. */
export const ServiceClassSchema = Type.Enum([...CLASSES], {
  description: 'a service class: T, L, H, VL or VH',
});

const serviceClass = Type.Optional(ServiceClassSchema);
const country = Type.Optional(
  Type.String({ maxLength: 2, description: 'two letters of a country' }),
);

/** A station as it is handed in by hand: without a declination, today's variation stands in. */
export const GivenStationSchema = Type.Object(
  {
    ident,
    latitudeDeg,
    longitudeDeg,
    elevationFt,
    declinationDegEast: Type.Optional(declinationDegEast),
    hasDme,
    frequencyMhz,
    name,
    dme,
    serviceClass,
    country,
  },
  {
    additionalProperties: false,
    description: 'a station: ident, latitudeDeg, longitudeDeg, elevationFt, hasDme, frequencyMhz',
  },
);

/** See `GivenStationSchema`. */
export type GivenStation = Static<typeof GivenStationSchema>;

const libraryFields = {
  ident,
  latitudeDeg,
  longitudeDeg,
  elevationFt,
  declinationDegEast,
  hasDme,
  frequencyMhz,
  name,
  dme,
  serviceClass,
  country,
  id: Type.String({ description: 'the number of its row, or one made for it here' }),
  declinationFrom: Type.Enum(['published', 'model'], {
    description: "'model': none is published, the variation on the day of import stands in",
  }),
  isElevationKnown: Type.Boolean({ description: 'false: none was given, 0 stands in' }),
  isByHand: Type.Boolean({ description: 'true: changed by hand, an import leaves it alone' }),
};

/** A station of the library. */
export const LibraryStationSchema = heldTo<LibraryStation>()(
  Type.Object(libraryFields, { additionalProperties: false }),
);

/** The stations that were found. */
export const FoundStationsSchema = Type.Object(
  {
    stations: Type.Array(
      Type.Object(
        {
          ...libraryFields,
          distanceNm: Type.Optional(
            Type.Number({ description: 'from the place that was asked about' }),
          ),
          doubts: Type.Array(Type.String(), { description: 'what to check, in plain words' }),
        },
        { additionalProperties: false },
      ),
    ),
  },
  { additionalProperties: false, description: 'the stations, nearest or best fit first' },
);

/** What a search asks for, in the query of its address. */
export const StationQuerySchema = Type.Object(
  {
    q: Type.Optional(
      Type.String({ maxLength: 100, description: 'part of an ident, a name or a frequency' }),
    ),
    nearLatitudeDeg: Type.Optional(
      Type.Number({ minimum: -90, maximum: 90, description: 'a latitude from -90 to 90' }),
    ),
    nearLongitudeDeg: Type.Optional(
      Type.Number({ minimum: -180, maximum: 180, description: 'a longitude from -180 to 180' }),
    ),
    withinNm: Type.Optional(
      Type.Number({ minimum: 0, maximum: 11_000, description: 'a distance in NM' }),
    ),
    frequencyMhz: Type.Optional(
      Type.Number({ minimum: 108, maximum: 118, description: 'a frequency in MHz' }),
    ),
    limit: Type.Optional(
      Type.Integer({ minimum: 1, maximum: 20_000, description: 'how many at most, 1 to 20000' }),
    ),
  },
  { additionalProperties: false, description: 'what to look for' },
);

/** See `StationQuerySchema`. */
export type StationQueryText = Static<typeof StationQuerySchema>;

/** What became of an import. */
export const ImportedSchema = Type.Object(
  {
    added: Type.Integer({ description: 'stations that are new' }),
    updated: Type.Integer({ description: 'stations that changed' }),
    skipped: Type.Array(
      Type.Object({ line: Type.Integer(), reason: Type.String() }, { additionalProperties: false }),
      { description: 'lines that were not taken, and why' },
    ),
    warnings: Type.Optional(
      Type.Array(Type.String(), { description: 'what is doubtful about the file as a whole' }),
    ),
  },
  { additionalProperties: false, description: 'what was added, changed and left out' },
);

/** See `ImportedSchema`. */
export type Imported = Static<typeof ImportedSchema>;
