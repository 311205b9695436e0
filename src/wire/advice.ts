import { Type } from 'typebox';
import type { TSchema } from 'typebox';
import type { Advice } from '../procedure/advice.ts';
import { heldTo } from './held.ts';

const record = { additionalProperties: false } as const;
const number = (description: string) => Type.Number({ description });
const known = <Schema extends TSchema>(schema: Schema, description: string) =>
  Type.Union([schema, Type.Null()], { description });
const numberOrNull = (description: string) => known(Type.Number(), description);

const HowFarSchema = Type.Object(
  {
    toGoNm: numberOrNull('ground distance to the end of the leg, NM; null: cannot tell'),
    pastEndNm: numberOrNull('how far the end of the leg lies behind, NM; null: not past it'),
    toGoS: numberOrNull('time to the end of the leg, seconds'),
    groundSpeedKt: numberOrNull('groundspeed, knots'),
    sdNm: numberOrNull('one standard deviation of toGoNm'),
    sdS: numberOrNull('one standard deviation of toGoS'),
    sdKt: numberOrNull('one standard deviation of groundSpeedKt'),
  },
  record,
);

const WhichWaySchema = Type.Object(
  {
    turn: Type.Enum(['left', 'right', 'none'], { description: 'which way to turn' }),
    turnDeg: number('size of the turn, 0 to 180 degrees'),
    headingDeg: number('heading to fly, degrees magnetic'),
    holdS: number('how long to hold it, seconds'),
    thenHeadingDeg: number('heading after that, degrees magnetic'),
  },
  record,
);

const WindSeenSchema = Type.Object(
  {
    fromDegMag: number('where the wind blows from, degrees magnetic'),
    speedKt: number('its speed, knots'),
    sdKt: number('one standard deviation of the wind along its worse axis, knots'),
  },
  record,
);

const EstimateSeenSchema = Type.Object(
  {
    crossTrackNm: numberOrNull('off course, NM, right of course positive'),
    crossTrackSdNm: numberOrNull('one standard deviation of crossTrackNm'),
    driftDeg: numberOrNull('track minus heading, degrees, blown to the right positive'),
    wind: known(WindSeenSchema, 'null while the readings do not show the wind'),
  },
  record,
);

const AlertSchema = Type.Object(
  {
    kind: Type.Enum(
      [
        'needle-not-moving',
        'wrong-station',
        'dme-not-moving',
        'dme-disagrees',
        'heading-indicator-disagrees',
        'reverse-sensing',
        'flag-off',
        'ident-not-confirmed',
        'outside-reception',
        'readings-disagree',
      ],
      { description: 'what does not fit' },
    ),
    ask: Type.String({ description: 'the one check that tells the candidates apart, as spoken' }),
  },
  record,
);

/** The answer to a reading, as it crosses the wire. */
export const AdviceSchema = heldTo<Advice>()(
  Type.Object(
    {
      phase: Type.Enum(
        ['intercept', 'track', 'near-station', 'passage', 'outbound', 'arriving', 'lost'],
        { description: 'where on the leg the aircraft seems to be' },
      ),
      howFar: HowFarSchema,
      whichWay: WhichWaySchema,
      estimate: EstimateSeenSchema,
      alerts: Type.Array(AlertSchema),
      say: Type.String({ description: 'what the voice says' }),
      why: Type.String({ description: 'the reason, in one or two sentences' }),
      nextReadingInS: number('when the next reading is worth most, seconds after the last one'),
    },
    { ...record, description: 'the answer' },
  ),
);
