import type { FieldProblem } from '../base/result.ts';

const KHZ_PER_MHZ = 1000;
const LOWEST_KHZ = 108_000;
const HIGHEST_KHZ = 117_950;
const STEP_KHZ = 50;
/** From here up VORs have the band to themselves. */
const SHARED_BELOW_KHZ = 112_000;
/** A frequency that has been through binary fractions may be this far off its step. */
const ROUNDING_KHZ = 0.01;

/**
 * The problem with a frequency on which no VOR transmits; empty when one may.
 *
 * 108.00 to 117.95 MHz in 50 kHz steps; below 112 MHz only even tenths (108.00, 108.05, 108.20, 108.25, ...),
 * because the odd ones belong to localizers.
 * *Source:* FAA-H-8083-15B, Instrument Flying Handbook, ch. 9; ICAO Annex 10 vol. I, 3.3.2 and vol. V
 * (50 kHz spacing; from memory).
 */
export function frequencyProblems(frequencyMhz: number, field: string): FieldProblem[] {
  const got = String(frequencyMhz);
  const khz = Math.round(frequencyMhz * KHZ_PER_MHZ);
  const isOnStep =
    Math.abs(frequencyMhz * KHZ_PER_MHZ - khz) < ROUNDING_KHZ && khz % STEP_KHZ === 0;
  if (!isOnStep || khz < LOWEST_KHZ || khz > HIGHEST_KHZ) {
    return [{ field, expected: 'a VOR frequency, 108.00 to 117.95 MHz in steps of 0.05', got }];
  }
  if (khz < SHARED_BELOW_KHZ && Math.floor(khz / 100) % 2 === 1) {
    const expected = 'an even tenth below 112 MHz: the odd ones are localizers';
    return [{ field, expected, got }];
  }
  return [];
}
