import { Type } from 'typebox';
import type { FieldProblem } from '../base/result.ts';
import type { AdviceRequest } from '../procedure/advise.ts';
import { checkStation } from '../station/check-station.ts';
import { heldTo } from './held.ts';
import { AircraftSchema, DateIsoSchema, LegSchema, WindSchema } from './leg.ts';
import { problemsIn } from './problems-in.ts';
import { ReadingSchema } from './reading.ts';

/** What an answer is asked for with: the day may be left out, then it is today. */
export type AskedAdvice = Omit<AdviceRequest, 'dateIso' | 'identConfirmed' | 'manner'> & {
  readonly dateIso?: string;
  readonly identConfirmed?: boolean;
};

/** The body of `POST /api/advice`. */
export const AskedAdviceSchema = heldTo<AskedAdvice>()(
  Type.Object(
    {
      leg: LegSchema,
      aircraft: AircraftSchema,
      forecastWind: Type.Optional(WindSchema),
      dateIso: Type.Optional(DateIsoSchema),
      readings: Type.Array(ReadingSchema, {
        maxItems: 2000,
        description: 'a list of at most 2000 readings, the newest last',
      }),
      identConfirmed: Type.Optional(
        Type.Boolean({ description: 'true once the ident has been heard and is right, or false' }),
      ),
    },
    {
      additionalProperties: false,
      description: 'a JSON object with leg, aircraft and readings',
    },
  ),
);

/**
 * The problems of stations that were read instead of the leg's (cross-bearings); `advise` judges all else.
 *
 * `asked` has passed its schema. Empty when nothing is wrong.
 */
export function crossBearingProblems(asked: AskedAdvice): readonly FieldProblem[] {
  return asked.readings.flatMap(({ station }, index) =>
    station === undefined ? [] : problemsIn(checkStation(station, `readings.${index}.station`)),
  );
}
