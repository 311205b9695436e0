import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';
import type { Wind } from '../wind/wind.ts';
import type { Belief } from './belief.ts';
import type { Alert } from './guidance.ts';
import type { Reading } from './reading.ts';

/** The headings that the pilot was told to fly: one now, another after a while. Magnetic, local. */
export interface ToldPlan {
  readonly headingDeg: number;
  /** Seconds until the second heading; null: the first one stays. */
  readonly holdS: number | null;
  readonly thenHeadingDeg: number;
}

/** All that is needed to go on from where the readings have led so far: plain data. */
export interface Estimate {
  readonly leg: DatedLeg;
  readonly aircraft: Aircraft;
  readonly forecastWind: Wind | null;
  /** In time order. */
  readonly readings: readonly Reading[];
  /** Null before anything is known. */
  readonly belief: Belief | null;
  /** Time of the last reading. */
  readonly atMs: number | null;
  /** Heading held at the last reading, magnetic. */
  readonly headingDeg: number | null;
  readonly plan: ToldPlan | null;
  readonly alerts: readonly Alert[];
}
