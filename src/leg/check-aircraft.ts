import { accept, refuse, type Result } from '../base/result.ts';
import { rangeProblems } from '../base/in-range.ts';
import type { Aircraft } from './leg.ts';

const AIRSPEED = { least: 30, most: 400, what: 'a true airspeed in knots' };
const DEGREES_PER_DOT = { least: 0.5, most: 5, what: 'degrees off course for one dot' };
const DOTS = { least: 1, most: 10, what: 'dots from the centre to full deflection' };

/**
 * Accepts an aircraft whose airspeed and instrument scale make sense; refuses with every field that does not.
 *
 * `field`: where the aircraft stands in the input. The ranges are common practice, no source: light aircraft,
 * and every course indicator from 2 dots of 5 degrees to 5 dots of 2 degrees with room to both sides.
 */
export function checkAircraft(aircraft: Aircraft, field = 'aircraft'): Result<Aircraft> {
  const problems = [
    ...rangeProblems(`${field}.trueAirspeedKt`, aircraft.trueAirspeedKt, AIRSPEED),
    ...rangeProblems(`${field}.degreesPerDot`, aircraft.degreesPerDot, DEGREES_PER_DOT),
    ...rangeProblems(`${field}.dotsFullScale`, aircraft.dotsFullScale, DOTS),
  ];
  return problems.length > 0 ? refuse(problems) : accept(aircraft);
}
