import { FT_PER_NM } from '../base/units.ts';
import type { Aircraft } from '../leg/leg.ts';
import type { DatedLeg } from '../leg/leg-frame.ts';

/**
 * One leg as the filter sees it: plain numbers in a plane about the station, x east and y north (NM),
 * true north at the station (azimuthal equidistant: bearings and ranges from the station are exact).
 */
export interface Scene {
  readonly isTo: boolean;
  /** Course to fly, true at the station. */
  readonly courseDegTrue: number;
  readonly declinationDegEast: number;
  /** Variation at the station, and how it changes for each NM east and north. */
  readonly variationDegEast: number;
  readonly variationDegPerNmEast: number;
  readonly variationDegPerNmNorth: number;
  /** How much the meridian turns away from the station's own for each NM east. */
  readonly convergenceDegPerNmEast: number;
  readonly hasDme: boolean;
  readonly dmeEastNm: number;
  readonly dmeNorthNm: number;
  readonly heightOverDmeNm: number;
  readonly heightOverVorNm: number;
  readonly coneRadiusNm: number;
  /** Ground range at which the leg ends; 0: over the station; null: no end known. */
  readonly endGroundNm: number | null;
  readonly trueAirspeedKt: number;
  readonly degreesPerDot: number;
  readonly dotsFullScale: number;
}
