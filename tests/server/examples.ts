import { encodeTime } from 'ulid';
import type { FlightEvent } from '../../src/flight/event.ts';
import type { Leg } from '../../src/leg/leg.ts';

/** An invented station in the open North Atlantic. */
export const leg: Leg = {
  station: {
    ident: 'QEV',
    latitudeDeg: 46.5,
    longitudeDeg: -21.25,
    elevationFt: 410,
    declinationDegEast: -7,
    hasDme: true,
  },
  direction: 'to',
  courseDeg: 112,
  endDmeNm: 0,
  altitudeFt: 4500,
};

export const aircraft = { trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 };

export const reading = {
  atMs: 0,
  headingDeg: 112,
  courseSetDeg: 112,
  needleDots: -1.5,
  flag: 'to',
  dmeNm: 11.2,
};

/** The body of a request for advice that is right in everything. */
export const asked = {
  leg,
  aircraft,
  forecastWind: { fromDegTrue: 330, speedKt: 15 },
  dateIso: '2026-11-25',
  readings: [reading],
};

const START_MS = 1_764_062_000_000;

/** A ULID with a number in its last characters. */
export function idOf(number: number): string {
  return encodeTime(START_MS, 10) + number.toString(10).padStart(16, '0');
}

/** The pilot's remark number so-and-so, a second after the one before. */
export function note(number: number, text = `remark ${number}`): FlightEvent {
  return { id: idOf(number), atMs: START_MS + number * 1000, kind: 'note', text };
}
