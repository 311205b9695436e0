import type { FlightEvent } from '../../src/flight/event.ts';
import type { Leg } from '../../src/leg/leg.ts';
import { AIRCRAFT, DATE_ISO, INBOUND, OUTBOUND, dated } from './ocean-legs.ts';

/** Feet in a nautical mile. */
const FT_PER_NM = 6076.1155;

/** In still air the heading is the course, turned from the station's declination to the variation. */
function stillHeadingDeg(leg: Leg): number {
  return leg.courseDeg + leg.station.declinationDegEast - dated(leg).variationDegEast;
}

/** What the DME shows over that ground distance at the leg's altitude, to a tenth. */
function dmeNm(groundNm: number, leg: Leg): number {
  const heightNm = (leg.altitudeFt - leg.station.elevationFt) / FT_PER_NM;
  return Math.round(Math.hypot(groundNm, heightNm) * 10) / 10;
}

/** The plan of the flight: to the station on 112, and out on 140 to DME 14, no wind forecast. */
export const PLAN: FlightEvent = {
  id: 'A0',
  atMs: 0,
  kind: 'plan',
  name: 'Still air',
  legs: [INBOUND, OUTBOUND],
  aircraft: AIRCRAFT,
  forecastWind: { fromDegTrue: 0, speedKt: 0 },
  dateIso: DATE_ISO,
};

/** The ident of the station, heard before the first reading. */
const IDENT: FlightEvent = {
  id: 'A1',
  atMs: 1,
  kind: 'ident',
  legIndex: 0,
  outcome: 'confirmed',
  by: 'ear',
};

/** Ground distance to the station at a moment: 8 NM at the start, at the airspeed. */
export function stillRangeNm(atS: number): number {
  return 8 - (AIRCRAFT.trueAirspeedKt * atS) / 3600;
}

/** A reading on the inbound course with the needle centred. */
export function inboundReading(atS: number): FlightEvent {
  return {
    id: `B${String(atS).padStart(4, '0')}`,
    atMs: atS * 1000,
    kind: 'reading',
    headingDeg: Math.round(stillHeadingDeg(INBOUND)),
    needleDots: 0,
    flag: 'to',
    dmeNm: dmeNm(stillRangeNm(atS), INBOUND),
  };
}

/** The flight up to 4.3 NM from the station. */
export const INBOUND_FLOWN: readonly FlightEvent[] = [
  PLAN,
  IDENT,
  ...[0, 60, 120].map((atS) => inboundReading(atS + 20)),
];

/** The reading that shows the station passage, 10 s after it. */
export const PASSED: FlightEvent = {
  id: 'B0313',
  atMs: 313_000,
  kind: 'reading',
  headingDeg: Math.round(stillHeadingDeg(INBOUND)),
  flag: 'from',
  dmeNm: dmeNm(0.26, INBOUND),
};
