import type { PlanFields } from './store/flight-store.ts';
import type { Station } from '../src/station/station.ts';

/** Invented: there is nothing but water at this place. */
const queenVictor: Station = {
  ident: 'QEV',
  name: 'invented station, open ocean',
  frequencyMhz: 113.35,
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
  hasDme: true,
};

/**
 * A flight of two legs to try the tool with: inbound to an invented station, overhead, and outbound to
 * a place known by its DME distance. No wind is given: nobody tells the pilot, the readings have to.
 *
 * `dateIso`: the day of the flight, today.
 */
export function demoPlan(dateIso: string): PlanFields {
  return {
    name: 'Demo flight over open ocean',
    dateIso,
    aircraft: { trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 },
    legs: [
      { station: queenVictor, direction: 'to', courseDeg: 112, endDmeNm: 0, altitudeFt: 4500 },
      { station: queenVictor, direction: 'from', courseDeg: 68, endDmeNm: 14, altitudeFt: 4500 },
    ],
  };
}
