import type { Station } from '../station/station.ts';

/** An arc flown about the station at a steady DME distance, until a radial on which it is left. */
export interface DmeArc {
  /** What the DME reads on the arc (slant NM). */
  readonly dmeNm: number;
  /** Radial on which the arc ends, degrees by the station's own declination. */
  readonly toRadialDeg: number;
  /** Which way round the station, seen from above. */
  readonly turn: 'clockwise' | 'anticlockwise';
}

/** One radial flown to or from one station, or an arc about it. */
export interface Leg {
  readonly station: Station;
  readonly direction: 'to' | 'from';
  /** Course to fly and to set on the OBS, degrees by the station's own declination. */
  readonly courseDeg: number;
  /**
   * What the DME reads (slant NM) where the leg ends. 0 or left out on a `to` leg: over the station.
   * Left out on a `from` leg: no end is known, so there is no distance to go.
   */
  readonly endDmeNm?: number;
  /** Above mean sea level. */
  readonly altitudeFt: number;
  /**
   * The leg is this arc. It is joined while the radial of `courseDeg` is flown: inbound where `direction` is
   * `to`, outbound where it is `from`. `endDmeNm` is then left out.
   */
  readonly arc?: DmeArc;
}

/** The aircraft as far as the tool needs to know it, with the scale of its course indicator. */
export interface Aircraft {
  readonly trueAirspeedKt: number;
  /** Off-course degrees for one dot of the needle. */
  readonly degreesPerDot: number;
  /** Dots from the centre to full deflection. */
  readonly dotsFullScale: number;
}

/** Two degrees a dot and five dots to each side: a course indicator for VOR of ten degrees each way. */
export const USUAL_INDICATOR = { degreesPerDot: 2, dotsFullScale: 5 } as const;
