import type { FieldProblem } from '../src/base/result.ts';
import type { FlightEvent } from '../src/flight/event.ts';
import type { Append, Appended } from '../src/wire/flight.ts';
import { eventProblems } from '../src/wire/event-problems.ts';
import type { Followers } from './follow.ts';
import { fieldRefusal } from './problems.ts';
import type { Records } from './records.ts';

/**
 * Appends events that have passed their schema, over HTTP and over a socket alike: checks their numbers,
 * records all or none, tells those who follow. Throws a refusal that names the field.
 */
export function append(
  records: Records,
  followers: Followers,
  flightId: string,
  events: Append['events'],
): Appended {
  const problems = appendProblems({ events });
  if (problems.length > 0) throw fieldRefusal(problems);
  const result = records.append(flightId, events);
  if (result.kind === 'conflict')
    throw fieldRefusal([
      {
        field: `events.${result.index}.id`,
        expected: 'the same content as was recorded under this id',
        got: `${result.id} with other content`,
      },
    ]);
  if (result.added > 0) followers.wake(flightId);
  return { added: result.added, known: result.known };
}

/** What is wrong with the values of events that have the right form. */
export function appendProblems(whole: unknown): readonly FieldProblem[] {
  const { events } = whole as { readonly events: readonly (FlightEvent | null)[] };
  return events.flatMap((event, index) =>
    // In the place of an event of an unknown kind there is nothing; its kind has been refused.
    event === null ? [] : eventProblems(event, `events.${index}`),
  );
}

/** Where to go on after an event, in the order of arrival; null stands for the beginning. */
export function arrivalOf(records: Records, flightId: string, afterId: string | null): number {
  if (afterId === null) return 0;
  const arrival = records.arrivalOf(flightId, afterId);
  if (arrival === null)
    throw fieldRefusal([
      { field: 'afterId', expected: 'the id of an event of this flight', got: afterId },
    ]);
  return arrival;
}
