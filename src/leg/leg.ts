import type { Station } from '../station/station.ts';

/** One radial flown to or from one station. */
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
}

/** The aircraft as far as the tool needs to know it, with the scale of its course indicator. */
export interface Aircraft {
  readonly trueAirspeedKt: number;
  /** Off-course degrees for one dot of the needle. */
  readonly degreesPerDot: number;
  /** Dots from the centre to full deflection. */
  readonly dotsFullScale: number;
}
