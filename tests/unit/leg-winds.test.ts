import { describe, expect, it } from 'vitest';
import type { FlightEvent, LegWind, PlanEvent } from '../../src/flight/event.ts';
import { checklistNow } from '../../src/flight/checklist-now.ts';
import { addEvents, emptyFold, foldFlight } from '../../src/flight/fold.ts';
import { STATE_SIZE, WIND_EAST, WIND_NORTH } from '../../src/track/belief.ts';
import type { Wind } from '../../src/wind/wind.ts';
import { eventProblems } from '../../src/wire/event-problems.ts';
import { FlightEventSchema } from '../../src/wire/event.ts';
import { problemsOf } from '../../src/wire/problems-of.ts';
import { FIRST, PLAN, SECOND } from './ocean-flight.ts';
import { dated, OUTBOUND } from './ocean-legs.ts';
import { headingForCourse } from '../../src/wind/triangle.ts';

/** 15 kt from 330 is the forecast of the whole flight; on the leg out the wind blows from the west. */
const WEST: Wind = { fromDegTrue: 270, speedKt: 25 };
const withWinds = (...legWinds: readonly LegWind[]): PlanEvent => ({ ...PLAN, legWinds });
const out: FlightEvent = { id: 'C1', atMs: 130_000, kind: 'leg-started', legIndex: 1 };
const turnOut = (plan: PlanEvent) =>
  checklistNow(foldFlight([plan, out])).find(({ item }) => item === 'turn')?.say;

describe('the forecast wind of a single leg', () => {
  it('is that of the leg when it is begun, as if it were the forecast of the flight', () => {
    const own = withWinds({ legIndex: 1, wind: WEST });
    expect(turnOut(own)).toBe(turnOut({ ...PLAN, forecastWind: WEST }));
    expect(turnOut(own)).not.toBe(turnOut(PLAN));
  });

  it('gives the heading of the wind triangle (Aviation Formulary) on that leg', () => {
    const leg = dated(OUTBOUND);
    const flown = headingForCourse({
      courseDegTrue: leg.courseDegTrue,
      trueAirspeedKt: PLAN.aircraft.trueAirspeedKt,
      wind: WEST,
    });
    if (!flown.ok) throw new Error('not flown');
    const magneticDeg = Math.round(flown.value.headingDegTrue - leg.variationDegEast);
    const words = ['zero', 'one', 'two', 'tree', 'fower', 'fife', 'six', 'seven', 'eight', 'niner'];
    const figures = String(magneticDeg).padStart(3, '0').split('');
    const plain = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'niner'];
    const said = turnOut(withWinds({ legIndex: 1, wind: WEST })) ?? '';
    const spoken = [words, plain].map((list) =>
      figures.map((each) => list[Number(each)]).join(' '),
    );
    expect(spoken.some((heading) => said.includes(heading))).toBe(true);
  });

  it('leaves the other legs with the forecast of the flight', () => {
    const own = withWinds({ legIndex: 1, wind: WEST });
    expect(foldFlight([own, FIRST, SECOND]).estimate).toEqual(
      foldFlight([PLAN, FIRST, SECOND]).estimate,
    );
  });

  it('moves the wind that the readings have shown by the difference of the forecasts', () => {
    const before = foldFlight([PLAN, FIRST, SECOND, out]).estimate?.belief;
    const after = foldFlight([withWinds({ legIndex: 1, wind: WEST }), FIRST, SECOND, out]).estimate
      ?.belief;
    if (!before || !after) throw new Error('no estimate');
    // Where they blow to, knots east and north: 330/15 is 7.5 and -13.0, 270/25 is 25 and 0.
    expect(after.mean.windEastKt - before.mean.windEastKt).toBeCloseTo(25 - 7.5, 6);
    expect(after.mean.windNorthKt - before.mean.windNorthKt).toBeCloseTo(12.990381, 6);
    const halfSquared = (17.5 ** 2 + 12.990381 ** 2) / 4;
    for (const index of [WIND_EAST, WIND_NORTH]) {
      const at = index * STATE_SIZE + index;
      expect((after.covariance[at] ?? 0) - (before.covariance[at] ?? 0)).toBeCloseTo(
        halfSquared,
        4,
      );
    }
    expect(after.mean.lnRange).toBe(before.mean.lnRange);
  });

  it('is the same as none where it equals the forecast of the flight', () => {
    const same = withWinds({ legIndex: 1, wind: { fromDegTrue: 330, speedKt: 15 } });
    const events = [FIRST, SECOND, out];
    expect(foldFlight([same, ...events]).advice).toEqual(foldFlight([PLAN, ...events]).advice);
    expect(foldFlight([same, ...events]).estimate).toEqual(foldFlight([PLAN, ...events]).estimate);
  });

  it('is taken where the flight as a whole has none', () => {
    const { id, atMs, kind, name, legs, aircraft, dateIso } = PLAN;
    const bare = { id, atMs, kind, name, legs, aircraft, dateIso };
    const own = { ...bare, legWinds: [{ legIndex: 1, wind: WEST }] };
    expect(turnOut(own)).toBe(turnOut({ ...PLAN, forecastWind: WEST }));
    // A wind that the readings have shown is not thrown away for it.
    const read = [FIRST, SECOND, out];
    expect(foldFlight([own, ...read]).estimate).toEqual(foldFlight([bare, ...read]).estimate);
  });

  it('comes to the same whether the log is folded at once or step by step', () => {
    const events = [
      withWinds({ legIndex: 1, wind: WEST }),
      FIRST,
      out,
      { ...SECOND, atMs: 200_000 },
    ];
    const steps = events.reduce((fold, event) => addEvents(fold, [event]), emptyFold());
    expect(steps.state).toEqual(foldFlight(events));
  });

  it('crosses the wire as it is, and with nothing beside it', () => {
    const id = '01KAXQ3V7N0000000000000001';
    const plan = { ...withWinds({ legIndex: 1, wind: WEST }), id };
    expect(problemsOf(FlightEventSchema, plan)).toEqual([]);
    const more = { ...plan, legWinds: [{ legIndex: 1, wind: WEST, gustKt: 40 }] };
    expect(problemsOf(FlightEventSchema, more)).not.toEqual([]);
  });

  it('is refused with its field where it is no wind', () => {
    const bad = withWinds({ legIndex: 1, wind: { fromDegTrue: 400, speedKt: -1 } });
    expect(eventProblems(bad, 'events.0').map(({ field }) => field)).toEqual([
      'events.0.legWinds.0.wind.fromDegTrue',
      'events.0.legWinds.0.wind.speedKt',
    ]);
  });
});
