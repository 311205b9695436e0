import fc from 'fast-check';
import { Check } from 'typebox/value';
import { describe, expect, it } from 'vitest';
import { AskedAdviceSchema } from '../../src/wire/advice-request.ts';
import { AppendSchema } from '../../src/wire/flight.ts';
import { problemsOf } from '../../src/wire/problems-of.ts';
import { asked, note } from '../server/examples.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Every place inside a JSON value, as the list of keys that leads to it. */
function placesIn(value: Json, here: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [here];
  const inner = Object.entries(value).flatMap(([key, each]) => placesIn(each, [...here, key]));
  return [here, ...inner];
}

/** The same value with another one in one place; left out there when it is undefined. */
function changed(value: Json, place: readonly string[], put: Json | undefined): Json | undefined {
  const [key, ...rest] = place;
  if (key === undefined) return put;
  if (Array.isArray(value)) {
    const inner = value.map((each, index) =>
      String(index) === key ? changed(each, rest, put) : each,
    );
    return inner.filter((each) => each !== undefined);
  }
  const record = value as Record<string, Json>;
  const inner = changed(record[key] ?? null, rest, put);
  const others = Object.entries(record).filter(([each]) => each !== key);
  return Object.fromEntries(inner === undefined ? others : [...others, [key, inner]]);
}

const anything = fc.jsonValue() as fc.Arbitrary<Json>;

describe('problemsOf agrees with the JSON schema itself (checked by TypeBox)', () => {
  const cases = [
    { name: 'a request for advice', schema: AskedAdviceSchema, right: asked },
    { name: 'events', schema: AppendSchema, right: { events: [note(1), note(2)] } },
  ];

  it.each(cases)('$name: any JSON at all', ({ schema }) => {
    fc.assert(
      fc.property(anything, (value) => {
        expect(problemsOf(schema, value).length === 0).toBe(Check(schema, value));
      }),
    );
  });

  it.each(cases)('$name: right but for one place', ({ schema, right }) => {
    const whole = right as unknown as Json;
    fc.assert(
      fc.property(
        fc.constantFrom(...placesIn(whole)),
        fc.option(anything, { nil: undefined }),
        (place, put) => {
          const value = changed(whole, place, put);
          expect(problemsOf(schema, value).length === 0).toBe(Check(schema, value));
        },
      ),
    );
  });
});
