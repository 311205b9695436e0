import { Type } from 'typebox';
import type { AntennaSite, Station } from '../station/station.ts';
import { heldTo } from './held.ts';

const siteFields = {
  latitudeDeg: Type.Number({
    description: 'a latitude from -90 to 90 degrees, north positive, WGS84',
  }),
  longitudeDeg: Type.Number({
    description: 'a longitude from -180 to 180 degrees, east positive, WGS84',
  }),
  elevationFt: Type.Number({ description: 'an elevation in feet above mean sea level' }),
};

const AntennaSiteSchema = heldTo<AntennaSite>()(
  Type.Object(siteFields, {
    additionalProperties: false,
    description: "the DME's own antenna: latitudeDeg, longitudeDeg, elevationFt",
  }),
);

/** A VOR with or without DME, as it crosses the wire. */
export const StationSchema = heldTo<Station>()(
  Type.Object(
    {
      ident: Type.String({ maxLength: 20, description: 'an ident of 1 to 4 letters or figures' }),
      ...siteFields,
      declinationDegEast: Type.Number({
        description:
          "the station's declination in degrees, east positive: true north to its zero radial",
      }),
      hasDme: Type.Boolean({ description: 'true with a DME, false without' }),
      frequencyMhz: Type.Optional(
        Type.Number({ description: 'a frequency from 108.00 to 117.95 MHz' }),
      ),
      name: Type.Optional(
        Type.String({ maxLength: 200, description: 'a name of at most 200 letters' }),
      ),
      dme: Type.Optional(AntennaSiteSchema),
    },
    {
      additionalProperties: false,
      description:
        'a station: ident, latitudeDeg, longitudeDeg, elevationFt, declinationDegEast, hasDme',
    },
  ),
);
