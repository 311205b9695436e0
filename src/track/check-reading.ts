import { accept, refuse } from '../base/result.ts';
import type { FieldProblem, Result } from '../base/result.ts';
import type { Aircraft } from '../leg/leg.ts';
import { checkStation } from '../station/check-station.ts';
import type { Reading } from './reading.ts';

/** Largest slant range that a reading may show, NM (a DME serves to about 200 NM). */
const GREATEST_DME_NM = 200;

function withinProblem(
  field: string,
  value: number | undefined,
  low: number,
  high: number,
  words: string,
): FieldProblem[] {
  if (value === undefined || (Number.isFinite(value) && value >= low && value <= high)) return [];
  return [{ field, expected: words, got: String(value) }];
}

/**
 * The reading if every number in it can be read off a panel; else which fields cannot, in words.
 *
 * Heading and course 0 to 360 degrees; needle within full deflection of this aircraft's instrument; DME
 * 0 to 200 NM; time any finite number. `field` names the reading in the problems (`readings.3`).
 */
export function checkReading(
  reading: Reading,
  aircraft: Aircraft,
  field = 'reading',
): Result<Reading> {
  const full = aircraft.dotsFullScale;
  const any = Number.MAX_SAFE_INTEGER;
  const problems = [
    ...withinProblem(`${field}.atMs`, reading.atMs, -any, any, 'a time in milliseconds'),
    ...withinProblem(
      `${field}.headingDeg`,
      reading.headingDeg,
      0,
      360,
      'a heading of 0 to 360 degrees',
    ),
    ...withinProblem(
      `${field}.courseSetDeg`,
      reading.courseSetDeg,
      0,
      360,
      'a course of 0 to 360 degrees',
    ),
    // On a scale that is none there is nothing to hold it to.
    ...(full > 0
      ? withinProblem(
          `${field}.needleDots`,
          reading.needleDots,
          -full,
          full,
          `dots from -${full} (full left) to ${full} (full right)`,
        )
      : []),
    ...withinProblem(
      `${field}.dmeNm`,
      reading.dmeNm,
      0,
      GREATEST_DME_NM,
      'a distance of 0 to 200 NM',
    ),
  ];
  if (reading.station !== undefined) {
    const station = checkStation(reading.station, `${field}.station`);
    if (!station.ok) problems.push(...station.problem);
  }
  return problems.length > 0 ? refuse(problems) : accept(reading);
}
