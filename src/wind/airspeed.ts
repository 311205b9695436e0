import { rangeProblems } from '../base/in-range.ts';
import { accept, refuse, type Result } from '../base/result.ts';
import { isaTemperatureC, kelvin, pressureRatio, SEA_LEVEL_K } from './standard-atmosphere.ts';

/** Speed of sound in the standard atmosphere at sea level, knots. *Source:* ICAO Doc 7488/3, from memory. */
const SOUND_AT_SEA_LEVEL_KT = 661.4786;

const CALIBRATED = { least: 0, most: 600, what: 'a calibrated airspeed in knots' };
const PRESSURE_ALTITUDE = { least: -2_000, most: 60_000, what: 'a pressure altitude in feet' };
const TEMPERATURE = { least: -90, most: 60, what: 'an outside temperature in degrees Celsius' };

/** What the pilot reads off to find the true airspeed. */
export interface AirspeedRead {
  readonly calibratedAirspeedKt: number;
  /** Altimeter set to 1013.25 hPa. */
  readonly pressureAltitudeFt: number;
  /** Outside air at rest (static). Left out: standard. */
  readonly temperatureC?: number;
}

/**
 * True airspeed from calibrated airspeed, pressure altitude and outside temperature, knots.
 *
 * Air counts as compressible; below the speed of sound. Refuses, by field, what is outside 0 to
 * 600 kt, -2,000 to 60,000 ft or -90 to 60 C, and what would be faster than sound.
 * *Source:* Ed Williams, Aviation Formulary 1.46, "Mach numbers, true vs calibrated airspeeds": DP = P0 ((1 +
 * 0.2 (CAS/CS0)^2)^3.5 - 1), M = sqrt(5 ((DP/P + 1)^(2/7) - 1)), TAS = M x speed of sound (formulas from memory).
 */
export function trueAirspeedKt(read: AirspeedRead): Result<number> {
  const { calibratedAirspeedKt, pressureAltitudeFt } = read;
  const temperatureC = read.temperatureC ?? isaTemperatureC(pressureAltitudeFt);
  const problems = [
    ...rangeProblems('calibratedAirspeedKt', calibratedAirspeedKt, CALIBRATED),
    ...rangeProblems('pressureAltitudeFt', pressureAltitudeFt, PRESSURE_ALTITUDE),
    ...rangeProblems('temperatureC', temperatureC, TEMPERATURE),
  ];
  if (problems.length > 0) return refuse(problems);
  const impact = (1 + 0.2 * (calibratedAirspeedKt / SOUND_AT_SEA_LEVEL_KT) ** 2) ** 3.5 - 1;
  const mach = Math.sqrt(5 * ((impact / pressureRatio(pressureAltitudeFt) + 1) ** (2 / 7) - 1));
  if (mach >= 1) {
    const expected = 'a speed below that of sound at this altitude';
    const got = String(calibratedAirspeedKt);
    return refuse([{ field: 'calibratedAirspeedKt', expected, got }]);
  }
  return accept(mach * SOUND_AT_SEA_LEVEL_KT * Math.sqrt(kelvin(temperatureC) / SEA_LEVEL_K));
}
