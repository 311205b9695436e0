import { Type } from 'typebox';
import { describe, expect, it } from 'vitest';
import { AskedAdviceSchema } from '../../src/wire/advice-request.ts';
import { eventProblems } from '../../src/wire/event-problems.ts';
import { FlightEventSchema } from '../../src/wire/event.ts';
import { AppendSchema } from '../../src/wire/flight.ts';
import { heldTo } from '../../src/wire/held.ts';
import { problemsOf } from '../../src/wire/problems-of.ts';
import { asked, note } from '../server/examples.ts';

const fields = (value: unknown) => problemsOf(AskedAdviceSchema, value).map(({ field }) => field);

describe('problemsOf', () => {
  it('finds nothing wrong with what is right', () => {
    expect(problemsOf(AskedAdviceSchema, asked)).toEqual([]);
    expect(problemsOf(AppendSchema, { events: [note(1)] })).toEqual([]);
  });

  it('names a missing field, says what it should be, and that there was nothing', () => {
    const body = JSON.parse(
      JSON.stringify({ ...asked, leg: { ...asked.leg, courseDeg: undefined } }),
    ) as unknown;
    expect(problemsOf(AskedAdviceSchema, body)).toEqual([
      {
        field: 'leg.courseDeg',
        expected: "a course from 0 to 360 degrees, by the station's own declination",
        got: 'nothing',
      },
    ]);
  });

  it.each([
    ['a text', '112', '"112"'],
    ['a truth', true, 'true'],
    ['null', null, 'null'],
    ['a list', [1, 2], 'a list of 2'],
    ['an object', { a: 1 }, 'an object'],
    ['a number past all numbers (1e999 in JSON)', Infinity, 'Infinity'],
  ])('repeats %s in the place of a number', (_what, courseDeg, got) => {
    const [problem] = problemsOf(AskedAdviceSchema, { ...asked, leg: { ...asked.leg, courseDeg } });
    expect(problem).toMatchObject({ field: 'leg.courseDeg', got });
  });

  it('calls an unknown field by its name, also one that every object has by birth', () => {
    const strange = JSON.parse('{"toString": 1, "__proto__": 2}') as object;
    expect(fields({ ...asked, leg: Object.assign(strange, asked.leg) })).toContain('leg.toString');
    const [problem] = problemsOf(AskedAdviceSchema, { ...asked, knots: 'x'.repeat(500) });
    expect(problem).toMatchObject({ field: 'knots', expected: 'no such field' });
    expect(problem?.got.length).toBeLessThan(100);
  });

  it('tells at most 50 problems', () => {
    const body = { ...asked, readings: Array.from({ length: 2000 }, () => ({})) };
    expect(problemsOf(AskedAdviceSchema, body)).toHaveLength(50);
  });

  it('tells a body that is no object by the name "body"', () => {
    expect(fields([])).toEqual(['body']);
    expect(fields(undefined)).toEqual(['body']);
  });

  it('judges an event by its kind, and only by it', () => {
    const [problem, ...more] = problemsOf(FlightEventSchema, { ...note(1), text: 7 }, 'events.4');
    expect(problem).toMatchObject({ field: 'events.4.text', got: '7' });
    expect(more).toEqual([]);
  });

  it('names the kinds that there are where the kind is none of them', () => {
    const [problem] = problemsOf(FlightEventSchema, { ...note(1), kind: 'song' });
    expect(problem).toMatchObject({ field: 'kind', got: '"song"' });
    expect(problem?.expected).toMatch(/^one of plan, reading, .*finished$/);
  });
});

describe('eventProblems', () => {
  it('lets a needle stand that fits some instrument: the plan it belongs to may not be here yet', () => {
    const reading = { id: note(1).id, atMs: 1, kind: 'reading', needleDots: -9 } as const;
    expect(eventProblems(reading, 'events.0')).toEqual([]);
    expect(eventProblems({ ...reading, needleDots: -11 }, 'events.0')).toMatchObject([
      { field: 'events.0.needleDots', got: '-11' },
    ]);
  });

  it('checks the station of a cross-bearing', () => {
    const station = { ...asked.leg.station, ident: 'TOO LONG' };
    const reading = { id: note(1).id, atMs: 1, kind: 'reading', station } as const;
    expect(eventProblems(reading, 'events.0')).toMatchObject([{ field: 'events.0.station.ident' }]);
  });
});

interface Sounding {
  readonly depthM: number;
  readonly remarks?: readonly string[];
}

const depthM = Type.Number();
const remarks = Type.Array(Type.String());

describe('heldTo', () => {
  it('compiles where the schema and the type are the same, and not where they have drifted apart', () => {
    const held = heldTo<Sounding>();
    const same = Type.Object({ depthM, remarks: Type.Optional(remarks) });
    expect(held(same)).toBe(same);
    // @ts-expect-error -- a field is missing
    held(Type.Object({ depthM }));
    // @ts-expect-error -- a field is not optional any more
    held(Type.Object({ depthM, remarks }));
    // @ts-expect-error -- a field is new
    held(Type.Object({ depthM, remarks: Type.Optional(remarks), by: Type.Optional(depthM) }));
    // @ts-expect-error -- a field has another type
    held(Type.Object({ depthM: Type.String(), remarks: Type.Optional(remarks) }));
  });
});
