import { Type } from 'typebox';
import type { FlightEvent } from '../flight/event.ts';
import { CHECK_ITEMS } from '../procedure/checklist.ts';
import { heldTo } from './held.ts';
import { AircraftSchema, DateIsoSchema, LegSchema, WindSchema } from './leg.ts';
import { readingFields } from './reading.ts';

/** A ULID in capital letters, made where the record was born (github.com/ulid/spec). */
export const UlidSchema = Type.String({
  pattern: '^[0-7][0-9A-HJKMNP-TV-Z]{25}$',
  description: 'a ULID: 26 capital letters and figures such as 01KAXM2Q0V8Z3N5R7T9W1Y4B6D',
});

const stamp = {
  id: UlidSchema,
  atMs: Type.Integer({
    minimum: 0,
    maximum: 8_640_000_000_000_000,
    description: 'the moment of the event in whole milliseconds since 1970',
  }),
};

const legIndex = Type.Integer({
  minimum: 0,
  maximum: 99,
  description: 'the number of a leg, counted from 0',
});

const words = (maxLength: number) =>
  Type.String({ maxLength, description: `a text of at most ${maxLength} letters` });

const strict = (description: string) => ({ additionalProperties: false, description }) as const;

/** One line of a flight's log, as it crosses the wire; told apart by its `kind`. */
export const FlightEventSchema = heldTo<FlightEvent>()(
  Type.Union(
    [
      Type.Object(
        {
          ...stamp,
          kind: Type.Literal('plan'),
          name: words(200),
          legs: Type.Array(LegSchema, {
            minItems: 1,
            maxItems: 100,
            description: 'a list of 1 to 100 legs',
          }),
          aircraft: AircraftSchema,
          forecastWind: Type.Optional(WindSchema),
          legWinds: Type.Optional(
            Type.Array(
              Type.Object({ legIndex, wind: WindSchema }, strict('the wind of one leg alone')),
              { maxItems: 100, description: 'a list of winds of single legs' },
            ),
          ),
          dateIso: DateIsoSchema,
        },
        strict('the plan that the flight starts from; a later one replaces it'),
      ),
      Type.Object(
        {
          ...stamp,
          kind: Type.Literal('reading'),
          ...readingFields,
          via: Type.Optional(
            Type.Enum(['tapped', 'typed', 'heard'], {
              description: "'tapped', 'typed' or 'heard'",
            }),
          ),
          text: Type.Optional(words(2000)),
        },
        strict('a reading; what was not read is left out'),
      ),
      Type.Object(
        {
          ...stamp,
          kind: Type.Literal('reading-corrected'),
          readingId: UlidSchema,
          ...readingFields,
        },
        strict('replaces all fields of an earlier reading'),
      ),
      Type.Object(
        { ...stamp, kind: Type.Literal('taken-back'), eventId: UlidSchema },
        strict('takes an earlier event back'),
      ),
      Type.Object(
        {
          ...stamp,
          kind: Type.Literal('check'),
          legIndex,
          item: Type.Enum(CHECK_ITEMS, { description: `one of ${CHECK_ITEMS.join(', ')}` }),
          outcome: Type.Enum(['done', 'skipped', 'reopened'], {
            description: "'done', 'skipped' or 'reopened'",
          }),
          reason: Type.Optional(words(500)),
        },
        strict('an item of the checklist done, skipped or opened again'),
      ),
      Type.Object(
        {
          ...stamp,
          kind: Type.Literal('ident'),
          legIndex,
          outcome: Type.Enum(['confirmed', 'doubted'], {
            description: "'confirmed' or 'doubted'",
          }),
          by: Type.Enum(['ear', 'tool'], { description: "'ear' or 'tool'" }),
          confidence: Type.Optional(
            Type.Number({ minimum: 0, maximum: 1, description: 'how sure, from 0 to 1' }),
          ),
        },
        strict('the ident was heard and is right, or is in doubt again'),
      ),
      Type.Object(
        { ...stamp, kind: Type.Literal('leg-started'), legIndex },
        strict('this leg is flown from now on'),
      ),
      Type.Object(
        { ...stamp, kind: Type.Literal('note'), text: words(10_000) },
        strict('a remark of the pilot'),
      ),
      Type.Object({ ...stamp, kind: Type.Literal('finished') }, strict('the flight is over')),
    ],
    { description: 'an event: id, atMs, kind and the fields of its kind' },
  ),
);
