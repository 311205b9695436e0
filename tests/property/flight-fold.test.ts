import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FlightEvent, ReadingFields } from '../../src/flight/event.ts';
import { addEvent, addEvents, emptyFold, foldFlight } from '../../src/flight/fold.ts';
import { AIRCRAFT, DATE_ISO, INBOUND, OUTBOUND } from '../unit/ocean-legs.ts';

// Folding estimates, guides and words every reading, so fewer runs than usual do.
const RUNS = { numRuns: 60 };

const IDS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j', 'k', 'l'] as const;

const fields: fc.Arbitrary<ReadingFields> = fc.record(
  {
    headingDeg: fc.integer({ min: 90, max: 130 }),
    // Half dots, some of them beyond full scale: a reading that is refused.
    needleDots: fc.integer({ min: -11, max: 11 }).map((halves) => halves / 2),
    flag: fc.constantFrom('to', 'from', 'off'),
    dmeNm: fc.integer({ min: 5, max: 150 }).map((tenths) => tenths / 10),
    courseSetDeg: fc.constantFrom(112, 109, 292),
  },
  { requiredKeys: [] },
);

const legIndex = fc.integer({ min: 0, max: 2 });

const plan = fc.constantFrom([INBOUND, OUTBOUND], [INBOUND], [OUTBOUND]).map((legs) => ({
  kind: 'plan' as const,
  name: 'p',
  legs,
  aircraft: AIRCRAFT,
  dateIso: DATE_ISO,
}));

const body = fc.oneof(
  { weight: 6, arbitrary: fields.map((given) => ({ kind: 'reading' as const, ...given })) },
  { weight: 1, arbitrary: plan },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fields, fc.constantFrom(...IDS))
      .map(([given, readingId]) => ({ kind: 'reading-corrected' as const, readingId, ...given })),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom(...IDS).map((eventId) => ({ kind: 'taken-back' as const, eventId })),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('ident' as const),
      legIndex,
      outcome: fc.constantFrom('confirmed' as const, 'doubted' as const),
      by: fc.constant('ear' as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('check' as const),
      legIndex,
      item: fc.constantFrom('tune' as const, 'identify' as const, 'turn' as const),
      outcome: fc.constantFrom('done' as const, 'skipped' as const, 'reopened' as const),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('leg-started' as const), legIndex }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'note' as const, text: 'n' }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'of-a-later-version' }) },
);

/** A log of up to a dozen events, the first a plan; times are coarse, so that some are equal. */
const log: fc.Arbitrary<readonly FlightEvent[]> = fc
  .tuple(plan, fc.array(fc.tuple(body, fc.integer({ min: 0, max: 20 })), { maxLength: 11 }))
  .map(([first, rest]) => [
    { ...first, id: 'a', atMs: 0 },
    ...rest.map(
      ([given, half], i) =>
        ({ ...given, id: IDS[i + 1] ?? 'z', atMs: half * 30_000 }) as FlightEvent,
    ),
  ]);

const shuffledLog = log.chain((events) =>
  fc.tuple(
    fc.constant(events),
    fc.shuffledSubarray([...events], { minLength: events.length, maxLength: events.length }),
  ),
);

describe('the fold of a flight', () => {
  it('is the same in whatever order the events come', () => {
    fc.assert(
      fc.property(shuffledLog, ([events, shuffled]) => {
        expect(foldFlight(shuffled)).toEqual(foldFlight(events));
      }),
      RUNS,
    );
  });

  it('is the same whether the events come at once or one by one, in any order', () => {
    fc.assert(
      fc.property(shuffledLog, ([events, shuffled]) => {
        const stepped = shuffled.reduce(addEvent, emptyFold());
        expect(stepped.state).toEqual(foldFlight(events));
        expect(stepped.events).toEqual(addEvents(emptyFold(), events).events);
      }),
      RUNS,
    );
  });

  it('is unchanged by events that it has already, even as copies', () => {
    fc.assert(
      fc.property(shuffledLog, ([events, shuffled]) => {
        const copies = shuffled.map((event) => ({ ...event }));
        const fold = addEvents(emptyFold(), events);
        expect(addEvents(fold, copies)).toBe(fold);
        expect(foldFlight([...events, ...copies])).toEqual(fold.state);
      }),
      RUNS,
    );
  });

  it('of two devices is the same on both, whichever logs the other first', () => {
    fc.assert(
      fc.property(log, fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }), (events, on) => {
        const here = events.filter((_, i) => i === 0 || on[i] === true);
        const there = events.filter((_, i) => i === 0 || on[i] === false);
        const one = addEvents(addEvents(emptyFold(), here), there).state;
        const other = addEvents(addEvents(emptyFold(), there), here).state;
        expect(one).toEqual(other);
        expect(one).toEqual(foldFlight(events));
      }),
      RUNS,
    );
  });

  it('loses no reading, whatever happens to it', () => {
    fc.assert(
      fc.property(log, (events) => {
        const given = events.filter((event) => event.kind === 'reading').map((event) => event.id);
        const kept = foldFlight(events).readings.map((record) => record.eventId);
        expect([...kept].sort()).toEqual([...given].sort());
      }),
      RUNS,
    );
  });

  it('after an undo and its undo is as if nothing had been undone', () => {
    fc.assert(
      fc.property(log, (events) => {
        const before = foldFlight(events);
        if (before.undoable === null) return;
        const atMs = 10_000_000;
        const { eventId } = before.undoable;
        const undo: FlightEvent = { id: 'y', atMs, kind: 'taken-back', eventId };
        const redo: FlightEvent = { id: 'z', atMs: atMs + 1, kind: 'taken-back', eventId: 'y' };
        expect(foldFlight([...events, undo]).undoable?.eventId).not.toBe(eventId);
        expect(foldFlight([...events, undo, redo])).toEqual(before);
      }),
      RUNS,
    );
  });

  it('after a correction is as if the reading had been right at once', () => {
    fc.assert(
      fc.property(log, fields, fields, (events, wrong, right) => {
        // An id that no event of the log points at, so that only this correction is about it.
        const reading = (given: ReadingFields): FlightEvent => ({
          id: 'x',
          atMs: 95_000,
          kind: 'reading',
          ...given,
        });
        const correction: FlightEvent = {
          id: 'y',
          atMs: 10_000_000,
          kind: 'reading-corrected',
          readingId: 'x',
          ...right,
        };
        const corrected = foldFlight([...events, reading(wrong), correction]);
        const atOnce = foldFlight([...events, reading(right)]);
        expect(corrected.estimate).toEqual(atOnce.estimate);
        expect(corrected.advice).toEqual(atOnce.advice);
        expect(corrected.legs).toEqual(atOnce.legs);
        expect(corrected.readings.map((record) => ({ ...record, isCorrected: false }))).toEqual(
          atOnce.readings.map((record) => ({ ...record, isCorrected: false })),
        );
      }),
      RUNS,
    );
  });

  it('lets out no number that is none and no figure in what is spoken', () => {
    fc.assert(
      fc.property(log, (events) => {
        for (const { advice } of foldFlight(events).readings) {
          if (advice === null) continue;
          expect(`${advice.say} ${advice.why}`).not.toMatch(/[0-9]|NaN|undefined|null|Infinity/);
          const { howFar, whichWay, estimate } = advice;
          const numbers: unknown[] = [howFar, whichWay, estimate].flatMap((each): unknown[] =>
            Object.values(each),
          );
          expect(
            numbers.filter((each) => typeof each === 'number' && !Number.isFinite(each)),
          ).toEqual([]);
        }
      }),
      RUNS,
    );
  });
});
