import type { FlightEvent, PlanEvent } from '../../src/flight/event.ts';
import { AIRCRAFT, DATE_ISO, INBOUND, OUTBOUND } from './ocean-legs.ts';

// The flight of the tests of the log: in to the station over the ocean, then out from it.

export const PLAN: PlanEvent = {
  id: 'A0',
  atMs: 0,
  kind: 'plan',
  name: 'Over the ocean',
  legs: [INBOUND, OUTBOUND],
  aircraft: AIRCRAFT,
  forecastWind: { fromDegTrue: 330, speedKt: 15 },
  dateIso: DATE_ISO,
};

type Given = Partial<Extract<FlightEvent, { kind: 'reading' }>>;

/** A reading so many seconds after the plan. */
export function readingAt(id: string, atS: number, given: Given): FlightEvent {
  return { id, atMs: atS * 1000, kind: 'reading', ...given };
}

export const FIRST = readingAt('B1', 60, {
  headingDeg: 112,
  needleDots: -1.5,
  flag: 'to',
  dmeNm: 11.2,
});
export const SECOND = readingAt('B2', 120, { headingDeg: 97, needleDots: -1, dmeNm: 9.7 });
