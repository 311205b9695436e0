import { wrap360 } from '../base/angle.ts';
import { rangeProblems } from '../base/in-range.ts';
import { accept, refuse, type Result } from '../base/result.ts';
import type { Wind } from './wind.ts';

const FROM = { least: 0, most: 360, what: 'where the wind comes from in true degrees' };
const SPEED = { least: 0, most: 200, what: 'a wind in knots' };

/**
 * Accepts a wind that can blow where light aircraft fly; refuses with every field that makes no sense.
 *
 * `field`: where the wind stands in the input. 360 is north and comes back as 0. Whether a course can be flown
 * in it is the wind triangle's answer, not this one's. The ranges are common practice, no source.
 */
export function checkWind(wind: Wind, field = 'forecastWind'): Result<Wind> {
  const problems = [
    ...rangeProblems(`${field}.fromDegTrue`, wind.fromDegTrue, FROM),
    ...rangeProblems(`${field}.speedKt`, wind.speedKt, SPEED),
  ];
  if (problems.length > 0) return refuse(problems);
  return accept({ ...wind, fromDegTrue: wrap360(wind.fromDegTrue) });
}
