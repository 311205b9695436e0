import { Type } from 'typebox';
import type { FieldProblem } from '../base/result.ts';
import type { AdviceRequest } from '../procedure/advise.ts';
import { heldTo } from './held.ts';
import { AskedAircraftSchema, DateIsoSchema, LegSchema, WindSchema } from './leg.ts';
import type { AskedAircraft } from './leg.ts';
import { ReadingSchema } from './reading.ts';

/** What an answer is asked for with: the day may be left out, then it is today; so may the indicator's scale. */
export type AskedAdvice = Omit<
  AdviceRequest,
  'aircraft' | 'dateIso' | 'identConfirmed' | 'manner'
> & {
  readonly aircraft: AskedAircraft;
  readonly dateIso?: string;
  readonly identConfirmed?: boolean;
};

/** The body of `POST /api/advice`. */
export const AskedAdviceSchema = heldTo<AskedAdvice>()(
  Type.Object(
    {
      leg: LegSchema,
      aircraft: AskedAircraftSchema,
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
 * A distance read where there is no DME, of the leg's station or of one tuned for a cross-bearing; `advise` judges
 * all else, as far as it can: a distance that nobody can have read is not dropped in silence.
 */
export function dmeProblems({ leg, readings }: AskedAdvice): readonly FieldProblem[] {
  return readings.flatMap(({ station, dmeNm }, index) => {
    if (dmeNm === undefined || (station ?? leg.station).hasDme) return [];
    const expected = 'no DME distance: the station has no DME';
    return [{ field: `readings.${index}.dmeNm`, expected, got: `${dmeNm}` }];
  });
}
