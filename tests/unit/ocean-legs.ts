import type { Aircraft, Leg } from '../../src/leg/leg.ts';
import type { DatedLeg } from '../../src/leg/leg-frame.ts';
import { datedLeg } from '../../src/leg/leg-frame.ts';
import type { Station } from '../../src/station/station.ts';
import type { Guidance } from '../../src/track/guidance.ts';

/** An invented station in the open Atlantic. */
export const QEV: Station = {
  ident: 'QEV',
  frequencyMhz: 113.35,
  latitudeDeg: 46.5,
  longitudeDeg: -21.25,
  elevationFt: 410,
  declinationDegEast: -7,
  hasDme: true,
};

/** Another one, 60 NM away, without DME. */
export const XUN: Station = {
  ident: 'XUN',
  frequencyMhz: 115.2,
  latitudeDeg: 46.1,
  longitudeDeg: -20,
  elevationFt: 0,
  declinationDegEast: -7,
  hasDme: false,
};

export const AIRCRAFT: Aircraft = { trueAirspeedKt: 95, degreesPerDot: 2, dotsFullScale: 5 };

export const DATE_ISO = '2026-11-25';

export const INBOUND: Leg = { station: QEV, direction: 'to', courseDeg: 112, altitudeFt: 4500 };

export const OUTBOUND: Leg = {
  station: QEV,
  direction: 'from',
  courseDeg: 140,
  endDmeNm: 14,
  altitudeFt: 4500,
};

/** The leg on the day, for tests that know it is a good one. */
export function dated(leg: Leg): DatedLeg {
  const result = datedLeg(leg, DATE_ISO);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

/** Guidance of an ordinary moment inbound, as `changes` alter it. */
export function guidance(changes: Partial<Guidance> = {}): Guidance {
  return {
    phase: 'track',
    howFar: {
      toGoNm: 11.1,
      pastEndNm: null,
      toGoS: 402,
      groundSpeedKt: 99,
      sdNm: 0.2,
      sdS: 10,
      sdKt: 3,
    },
    whichWay: { turn: 'left', turnDeg: 15, headingDeg: 97, holdS: 75, thenHeadingDeg: 108 },
    seen: {
      crossTrackNm: 0.58,
      crossTrackSdNm: 0.12,
      driftDeg: 5,
      wind: { fromDegMag: 338, speedKt: 15, sdKt: 6 },
    },
    nextQuestion: null,
    nextReadingInS: 90,
    ...changes,
  };
}
