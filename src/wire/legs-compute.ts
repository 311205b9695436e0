import { Type } from 'typebox';
import type { ComputedLeg } from '../leg/route/compute-leg.ts';
import type { ComputedRoute, RouteRequest } from '../leg/route/compute-legs.ts';
import type { PlanAircraft, RouteLeg } from '../leg/route/route-leg.ts';
import { heldTo } from './held.ts';
import { DateIsoSchema, WindSchema } from './leg.ts';
import { ServiceClassSchema } from './library-station.ts';
import { StationSchema } from './station.ts';

const placeSchema = (description: string) =>
  heldTo<NonNullable<RouteLeg['start']>>()(
    Type.Object(
      {
        latitudeDeg: Type.Number({ description: 'a latitude from -90 to 90, north positive' }),
        longitudeDeg: Type.Number({ description: 'a longitude from -180 to 180, east positive' }),
      },
      { additionalProperties: false, description },
    ),
  );

const RouteLegSchema = heldTo<RouteLeg>()(
  Type.Object(
    {
      station: StationSchema,
      direction: Type.Enum(['to', 'from'], { description: "'to' or 'from' (the station)" }),
      start: Type.Optional(
        placeSchema('the place where a leg to its station begins: latitudeDeg, longitudeDeg'),
      ),
      end: Type.Optional(
        placeSchema('the place where a leg from its station ends: latitudeDeg, longitudeDeg'),
      ),
      wind: Type.Optional(WindSchema),
      serviceClass: Type.Optional(ServiceClassSchema),
    },
    { additionalProperties: false, description: 'a leg: station, direction, start or end' },
  ),
);

const PlanAircraftSchema = heldTo<PlanAircraft>()(
  Type.Object(
    {
      trueAirspeedKt: Type.Number({ description: 'a true airspeed in knots' }),
      fuelPerHour: Type.Number({ description: 'fuel for one hour, in the unit given' }),
      fuelUnit: Type.String({ maxLength: 20, description: 'the unit of the fuel, like L' }),
    },
    {
      additionalProperties: false,
      description: 'an aircraft: trueAirspeedKt, fuelPerHour, fuelUnit',
    },
  ),
);

/** A route as it is handed in: without a day, today's. */
export type AskedRoute = Omit<RouteRequest, 'dateIso'> & { readonly dateIso?: string };

/** The body of `POST /api/legs/compute`. */
export const AskedRouteSchema = heldTo<AskedRoute>()(
  Type.Object(
    {
      aircraft: PlanAircraftSchema,
      wind: WindSchema,
      altitudeFt: Type.Number({ description: 'an altitude in feet above mean sea level' }),
      dateIso: Type.Optional(DateIsoSchema),
      legs: Type.Array(RouteLegSchema, { maxItems: 200, description: 'a list of 1 to 200 legs' }),
    },
    {
      additionalProperties: false,
      description: 'a JSON object with aircraft, wind, altitudeFt, dateIso and legs',
    },
  ),
);

type Bare<Value> = { [Key in keyof Value]: Value[Key] extends number ? number : Value[Key] };

const orNull = (description: string) => Type.Union([Type.Number(), Type.Null()], { description });

/** One leg of the answer. */
const ComputedLegSchema = heldTo<Bare<ComputedLeg>>()(
  Type.Object(
    {
      trackTrueDeg: Type.Number({ description: 'true track where the leg begins' }),
      courseDeg: Type.Number({ description: "OBS setting, by the station's declination" }),
      radialDeg: Type.Number({ description: 'the radial on which the leg is flown' }),
      distanceNm: Type.Number({ description: 'length of the leg' }),
      headingDeg: Type.Number({ description: 'magnetic, by the variation where the leg begins' }),
      windCorrectionDeg: Type.Number({ description: 'heading minus track, right positive' }),
      groundSpeedKt: Type.Number({ description: 'over the ground' }),
      timeS: Type.Number({ description: 'seconds for the leg' }),
      fuel: Type.Number({ description: "in the aircraft's unit, without reserve" }),
      dmeAtStartNm: orNull('DME where the leg begins (slant); null without a DME'),
      dmeAtEndNm: orNull('DME where the leg ends (slant); null without a DME'),
      coneRadiusNm: Type.Number({ description: 'radius of the blind cone at the altitude' }),
      lineOfSightNm: Type.Number({ description: 'radio horizon, both heights' }),
      serviceVolumeNm: orNull('how far the station serves there; null: no figure'),
      variationDegEast: Type.Number({ description: 'where the leg begins, on the day' }),
      warnings: Type.Array(Type.String(), { description: 'what to know, in plain words' }),
    },
    { additionalProperties: false },
  ),
);

/** The answer of `POST /api/legs/compute`. */
export const ComputedRouteSchema = Type.Object(
  {
    legs: Type.Array(ComputedLegSchema),
    totals: heldTo<ComputedRoute['totals']>()(
      Type.Object(
        {
          distanceNm: Type.Number(),
          timeS: Type.Number(),
          fuel: Type.Number({ description: 'without reserve' }),
        },
        { additionalProperties: false },
      ),
    ),
  },
  { additionalProperties: false, description: 'the legs in order, and the totals' },
);
