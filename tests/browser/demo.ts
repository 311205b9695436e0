import type { AirStart, Beacon } from './air.ts';
import { NOON_MS } from './stage.ts';

/** The invented station of the demo flight, as the page gives it: there is only water. */
export const QEV: Beacon = {
  ident: 'QEV',
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
};

/** A first reading of the demo flight. */
export const FIRST_PANEL = {
  headingDeg: 115,
  courseSetDeg: 112,
  needleDots: 1.5,
  flag: 'TO',
  dmeNm: 11.2,
} as const;

export const INBOUND_DEG = 112;
export const OUTBOUND_DEG = 68;
export const END_DME_NM = 14;

/** Twelve miles out, off the radial, in a wind that nobody told the page about. */
export const DEMO_START: AirStart = {
  beacon: QEV,
  radialDeg: INBOUND_DEG + 180 + 5,
  groundNm: 12,
  altitudeFt: 4500,
  headingDeg: 115,
  trueAirspeedKt: 95,
  windFromDegTrue: 20,
  windKt: 18,
  dateIso: '2026-11-25',
  startMs: NOON_MS,
};
