import { Type } from 'typebox';
import type { Aircraft, DmeArc, Leg } from '../leg/leg.ts';
import type { Wind } from '../wind/wind.ts';
import { heldTo } from './held.ts';
import { StationSchema } from './station.ts';

/** An arc about the station, as it crosses the wire. */
const DmeArcSchema = heldTo<DmeArc>()(
  Type.Object(
    {
      dmeNm: Type.Number({ description: 'what the DME reads on the arc, NM (slant range)' }),
      toRadialDeg: Type.Number({
        description:
          "the radial where the arc ends, 0 to 360 degrees, by the station's declination",
      }),
      turn: Type.Enum(['clockwise', 'anticlockwise'], {
        description: "'clockwise' or 'anticlockwise' about the station",
      }),
    },
    { additionalProperties: false, description: 'an arc: dmeNm, toRadialDeg, turn' },
  ),
);

/** One radial flown to or from one station, or an arc about it, as it crosses the wire. */
export const LegSchema = heldTo<Leg>()(
  Type.Object(
    {
      station: StationSchema,
      direction: Type.Enum(['to', 'from'], { description: "'to' or 'from' (the station)" }),
      courseDeg: Type.Number({
        description: "a course from 0 to 360 degrees, by the station's own declination",
      }),
      endDmeNm: Type.Optional(
        Type.Number({ description: 'what the DME reads where the leg ends, NM (slant range)' }),
      ),
      altitudeFt: Type.Number({ description: 'an altitude in feet above mean sea level' }),
      arc: Type.Optional(DmeArcSchema),
    },
    {
      additionalProperties: false,
      description:
        'a leg: station, direction, courseDeg, altitudeFt and, if known, endDmeNm; for an arc, arc',
    },
  ),
);

const trueAirspeedKt = Type.Number({ description: 'a true airspeed in knots, above 0' });
const degreesPerDot = Type.Number({ description: 'degrees off course for one dot of the needle' });
const dotsFullScale = Type.Number({ description: 'dots from the centre to full deflection' });

/** An aircraft as it is handed in for one answer: a scale that is left out is the usual one. */
export type AskedAircraft = Pick<Aircraft, 'trueAirspeedKt'> & Partial<Aircraft>;

/** The same, as it crosses the wire. */
export const AskedAircraftSchema = heldTo<AskedAircraft>()(
  Type.Object(
    {
      trueAirspeedKt,
      degreesPerDot: Type.Optional(degreesPerDot),
      dotsFullScale: Type.Optional(dotsFullScale),
    },
    {
      additionalProperties: false,
      description: 'an aircraft: trueAirspeedKt and, if not 2 and 5, degreesPerDot, dotsFullScale',
    },
  ),
);

/** The aircraft and the scale of its course indicator, as it crosses the wire. */
export const AircraftSchema = heldTo<Aircraft>()(
  Type.Object(
    { trueAirspeedKt, degreesPerDot, dotsFullScale },
    {
      additionalProperties: false,
      description: 'an aircraft: trueAirspeedKt, degreesPerDot, dotsFullScale',
    },
  ),
);

/** A forecast wind, as it crosses the wire. */
export const WindSchema = heldTo<Wind>()(
  Type.Object(
    {
      fromDegTrue: Type.Number({ description: 'where the wind blows from, 0 to 360 degrees true' }),
      speedKt: Type.Number({ description: 'a wind speed in knots' }),
    },
    {
      additionalProperties: false,
      description: 'a wind: fromDegTrue, speedKt',
    },
  ),
);

/** A day as `2026-11-25`; magnetic variation is taken for it. */
export const DateIsoSchema = Type.String({
  pattern: '^\\d{4}-\\d{2}-\\d{2}$',
  description: 'a day written as 2026-11-25',
});
