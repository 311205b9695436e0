import { Type } from 'typebox';
import type { Static } from 'typebox';
import { FlightEventSchema, UlidSchema } from './event.ts';

const record = { additionalProperties: false } as const;

/** A flight to be recorded. With an `id` of its own when it was born on a device without network. */
export const NewFlightSchema = Type.Object(
  {
    name: Type.String({
      minLength: 1,
      maxLength: 200,
      description: 'a name of 1 to 200 letters',
    }),
    id: Type.Optional(UlidSchema),
  },
  { ...record, description: 'a flight: name and, if it has one already, its id' },
);

/** See `NewFlightSchema`. */
export type NewFlight = Static<typeof NewFlightSchema>;

/** A flight in the list of flights. */
export const FlightSummarySchema = Type.Object(
  {
    id: UlidSchema,
    name: Type.String(),
    createdAtMs: Type.Number({ description: 'when the record was begun, ms since 1970' }),
    eventCount: Type.Integer({ description: 'how many events are recorded' }),
    firstAtMs: Type.Union([Type.Number(), Type.Null()], {
      description: 'moment of the earliest event, ms since 1970; null while there is none',
    }),
    lastAtMs: Type.Union([Type.Number(), Type.Null()], {
      description: 'moment of the latest event, ms since 1970; null while there is none',
    }),
  },
  record,
);

/** See `FlightSummarySchema`. */
export type FlightSummary = Static<typeof FlightSummarySchema>;

/** Events to be added to a flight: all of them or, when one is refused, none. */
export const AppendSchema = Type.Object(
  {
    events: Type.Array(FlightEventSchema, {
      minItems: 1,
      maxItems: 1000,
      description: 'a list of 1 to 1000 events',
    }),
  },
  { ...record, description: 'the events to append, as {"events": [...]}' },
);

/** See `AppendSchema`. */
export type Append = Static<typeof AppendSchema>;

/** What became of an append: how many events are new, how many were recorded before. */
export const AppendedSchema = Type.Object(
  {
    added: Type.Integer({ description: 'events that are new' }),
    known: Type.Integer({ description: 'events that were recorded before' }),
  },
  record,
);

/** See `AppendedSchema`. */
export type Appended = Static<typeof AppendedSchema>;

/** Events of a flight, in order of their time, then their id. */
export const EventsSchema = Type.Object({ events: Type.Array(FlightEventSchema) }, record);

/** How a socket that follows a flight begins: with the last event that it has, or null for all. */
export const GreetingSchema = Type.Object(
  {
    afterId: Type.Union([UlidSchema, Type.Null()], {
      description: 'the id of the last event received, or null for all',
    }),
  },
  { ...record, description: 'a greeting {"afterId": ...} or events {"events": [...]}' },
);

/** See `GreetingSchema`. */
export type Greeting = Static<typeof GreetingSchema>;
