/**
 * ICAO standard atmosphere. *Source for all:* ICAO Doc 7488/3 (1993), as in ISO 2533:1975; the figures
 * in feet are those exact figures in metres, converted (from memory).
 */
const SEA_LEVEL_C = 15;
const LAPSE_C_PER_FT = 0.0065 * 0.3048;
const TROPOPAUSE_FT = 11_000 / 0.3048;
const TROPOPAUSE_C = -56.5;
const ZERO_C_IN_K = 273.15;
/** g / (R x lapse rate). */
const PRESSURE_EXPONENT = 5.255_88;
/** R x T / g at the tropopause. */
const STRATOSPHERE_SCALE_FT = 20_805.8;

/** Standard temperature at the sea level, kelvin. */
export const SEA_LEVEL_K = SEA_LEVEL_C + ZERO_C_IN_K;

/** The same temperature in kelvin. */
export function kelvin(temperatureC: number): number {
  return temperatureC + ZERO_C_IN_K;
}

/**
 * Standard temperature at a pressure altitude, Celsius: 15 less 1.98 for each 1,000 ft up to 36,089 ft, then
 * -56.5 up to 65,617 ft.
 */
export function isaTemperatureC(pressureAltitudeFt: number): number {
  return pressureAltitudeFt < TROPOPAUSE_FT
    ? SEA_LEVEL_C - LAPSE_C_PER_FT * pressureAltitudeFt
    : TROPOPAUSE_C;
}

/** Static pressure at a pressure altitude as a part of the pressure at sea level. */
export function pressureRatio(pressureAltitudeFt: number): number {
  const lowerFt = Math.min(pressureAltitudeFt, TROPOPAUSE_FT);
  const aboveFt = Math.max(0, pressureAltitudeFt - TROPOPAUSE_FT);
  const lower = (1 - (LAPSE_C_PER_FT * lowerFt) / SEA_LEVEL_K) ** PRESSURE_EXPONENT;
  return lower * Math.exp(-aboveFt / STRATOSPHERE_SCALE_FT);
}
