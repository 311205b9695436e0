import { METRES_PER_FT } from '../base/units.ts';

// ICAO standard atmosphere. Source of every figure here: ICAO Doc 7488/3 (1993), the same as ISO 2533:1975,
// from memory; the tests hold it to published temperatures and airspeeds.
const SEA_LEVEL_C = 15;
const LAPSE_C_PER_FT = 0.0065 * METRES_PER_FT;
const TROPOPAUSE_FT = 11_000 / METRES_PER_FT;
const TROPOPAUSE_C = -56.5;
const ZERO_C_IN_K = 273.15;
/** g / (R x lapse rate). */
const PRESSURE_EXPONENT = 5.255_88;
/** R x T / g at the tropopause. */
const STRATOSPHERE_SCALE_FT = 20_805.8;

/** Standard temperature at sea level, kelvin. *Source:* ICAO Doc 7488/3. */
export const SEA_LEVEL_K = SEA_LEVEL_C + ZERO_C_IN_K;

/** A temperature in Celsius as kelvin. */
export function kelvin(temperatureC: number): number {
  return temperatureC + ZERO_C_IN_K;
}

/**
 * Standard temperature at a pressure altitude, Celsius: 15 less 1.98 for each 1,000 ft up to 36,089 ft, then
 * -56.5 up to 65,617 ft. *Source:* ICAO Doc 7488/3.
 */
export function isaTemperatureC(pressureAltitudeFt: number): number {
  return pressureAltitudeFt < TROPOPAUSE_FT
    ? SEA_LEVEL_C - LAPSE_C_PER_FT * pressureAltitudeFt
    : TROPOPAUSE_C;
}

/**
 * Static pressure at a pressure altitude as a part of the pressure at sea level, up to 65,617 ft.
 *
 * *Source:* ICAO Doc 7488/3.
 */
export function pressureRatio(pressureAltitudeFt: number): number {
  const lowerFt = Math.min(pressureAltitudeFt, TROPOPAUSE_FT);
  const aboveFt = Math.max(0, pressureAltitudeFt - TROPOPAUSE_FT);
  const lower = (1 - (LAPSE_C_PER_FT * lowerFt) / SEA_LEVEL_K) ** PRESSURE_EXPONENT;
  return lower * Math.exp(-aboveFt / STRATOSPHERE_SCALE_FT);
}
