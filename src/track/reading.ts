import type { Station } from '../station/station.ts';

/** `off`: the needle carries no information. */
export type Flag = 'to' | 'from' | 'off';

/** What the pilot reads off the panel at one moment. What was not read is left out. */
export interface Reading {
  /** Milliseconds since the epoch, or since any other fixed moment: only differences count. */
  readonly atMs: number;
  /** Direction indicator, magnetic. Left out: the last known or advised heading is being held. */
  readonly headingDeg?: number;
  /** Course set on the OBS when the needle was read, degrees by the station's declination. */
  readonly courseSetDeg: number;
  /** Negative: left of centre (fly left). Full deflection is `dotsFullScale` with its sign. */
  readonly needleDots?: number;
  readonly flag: Flag;
  /** Slant range shown, NM. */
  readonly dmeNm?: number;
  /** The station that was read, when it is not the leg's: a cross-bearing. */
  readonly station?: Station;
}
