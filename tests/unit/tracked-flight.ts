import type { DatedLeg } from '../../src/leg/leg-frame.ts';
import type { Leg } from '../../src/leg/leg.ts';
import type { Reading } from '../../src/track/reading.ts';
import { AIRCRAFT, dated } from './ocean-legs.ts';

const RAD = Math.PI / 180;

/** A first reading inbound: 1.5 dots left at 11.2 NM. */
export const FIRST: Reading = {
  atMs: 0,
  headingDeg: 112,
  courseSetDeg: 112,
  needleDots: -1.5,
  flag: 'to',
  dmeNm: 11.2,
};

/** A reading with one part left out. */
export function without<Part extends keyof Reading>(
  reading: Reading,
  part: Part,
): Omit<Reading, Part> {
  const rest = { ...reading };
  // eslint-disable-next-line @typescript-eslint/no-dynamic-delete -- the one key that the caller names
  delete rest[part];
  return rest;
}

/**
 * A leg over a flat earth with magnetic north everywhere along true north, so that a scene can be turned and
 * mirrored exactly.
 */
export function flatLeg(leg: Leg): DatedLeg {
  return {
    ...dated(leg),
    stationLatitudeDeg: 0,
    variationDegEast: 0,
    variationDegPerNmEast: 0,
    variationDegPerNmNorth: 0,
  };
}

/** A station on that flat earth, its radials by true north. */
export const FLAT_STATION = {
  ident: 'QEV',
  latitudeDeg: 0,
  longitudeDeg: -25,
  elevationFt: 0,
  declinationDegEast: 0,
  hasDme: true,
};

/** An aircraft flown exactly on a heading through a steady wind, over the flat earth. */
export interface FlatFlight {
  readonly leg: Leg;
  readonly rangeNm: number;
  readonly bearingDeg: number;
  readonly windToEastKt: number;
  readonly windToNorthKt: number;
}

/** What the panel shows without any error after flying one heading from the start, needle not rounded. */
export function panelAfter(
  flight: FlatFlight,
  headingDeg: number,
  atS: number,
  courseSetDeg = flight.leg.courseDeg,
): Reading {
  const speed = AIRCRAFT.trueAirspeedKt / 3600;
  const east =
    flight.rangeNm * Math.sin(flight.bearingDeg * RAD) +
    atS * (speed * Math.sin(headingDeg * RAD) + flight.windToEastKt / 3600);
  const north =
    flight.rangeNm * Math.cos(flight.bearingDeg * RAD) +
    atS * (speed * Math.cos(headingDeg * RAD) + flight.windToNorthKt / 3600);
  const radialDeg = Math.atan2(east, north) / RAD;
  const off = half(radialDeg - courseSetDeg);
  const flag = Math.abs(off) < 90 ? 'from' : 'to';
  const needleDeg = flag === 'from' ? -off : half(off - 180);
  const heightNm = (flight.leg.altitudeFt - flight.leg.station.elevationFt) / 6076.1155;
  const dmeNm = Math.hypot(east, north, heightNm);
  return {
    atMs: atS * 1000,
    headingDeg: ((headingDeg % 360) + 360) % 360,
    courseSetDeg,
    needleDots: Math.min(5, Math.max(-5, needleDeg / AIRCRAFT.degreesPerDot)),
    flag,
    ...(flight.leg.station.hasDme ? { dmeNm } : {}),
  };
}

function half(angleDeg: number): number {
  return angleDeg - 360 * Math.round(angleDeg / 360);
}

/** Readings of one straight flight at these times, seconds. */
export function straightFlight(
  flight: FlatFlight,
  headingDeg: number,
  atS: readonly number[],
): Reading[] {
  return atS.map((each) => panelAfter(flight, headingDeg, each));
}

/** The place and the wind of a mean, in the plane, for comparing. */
export function placeAndWind(mean: {
  readonly lnRange: number;
  readonly bearingRad: number;
  readonly windEastKt: number;
  readonly windNorthKt: number;
}): { east: number; north: number; windEast: number; windNorth: number } {
  const range = Math.exp(mean.lnRange);
  return {
    east: range * Math.sin(mean.bearingRad),
    north: range * Math.cos(mean.bearingRad),
    windEast: mean.windEastKt,
    windNorth: mean.windNorthKt,
  };
}

/** North to a station over the flat earth, 20 NM out, in a wind of 20 kt towards the east. */
export const NORTHBOUND: FlatFlight = {
  leg: { station: FLAT_STATION, direction: 'to', courseDeg: 0, altitudeFt: 4500 },
  rangeNm: 20,
  bearingDeg: 180,
  windToEastKt: 20,
  windToNorthKt: 0,
};

/** Readings every minute for five minutes, seconds. */
export const MINUTES = [0, 60, 120, 180, 240, 300];
