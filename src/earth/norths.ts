import { magneticDeg, trueDeg, type MagneticDeg, type TrueDeg } from '../base/bearing.ts';

/**
 * The magnetic direction of a true one: "variation east, magnetic least".
 *
 * `variationDegEast`: local variation on the day, east positive.
 * *Source:* FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, ch. 16, "Variation".
 */
export function magneticFromTrue(direction: TrueDeg, variationDegEast: number): MagneticDeg {
  return magneticDeg(direction - variationDegEast);
}

/** The true direction of a magnetic one; the inverse of `magneticFromTrue`, same source. */
export function trueFromMagnetic(direction: MagneticDeg, variationDegEast: number): TrueDeg {
  return trueDeg(direction + variationDegEast);
}
