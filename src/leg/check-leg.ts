import { wrap360 } from '../base/angle.ts';
import { accept, refuse, type FieldProblem, type Result } from '../base/result.ts';
import { FT_PER_NM } from '../base/units.ts';
import { checkStation } from '../station/check-station.ts';
import { rangeProblems } from '../base/in-range.ts';
import { arcProblems } from './check-arc.ts';
import type { Leg } from './leg.ts';

const COURSE = { least: 0, most: 360, what: 'a course in degrees' };
const ALTITUDE = { least: -1_000, most: 45_000, what: 'feet above mean sea level' };
const END_DME = { least: 0, most: 250, what: 'a DME distance in NM' };

/**
 * Accepts a leg that can be flown; refuses with every field that cannot be, in a pilot's words.
 *
 * `field`: where the leg stands in the input (`leg`, `legs.1`). A course of 360 is north and comes back as 0.
 * The altitude must lie above the station. An end that the DME cannot show, because the aircraft is higher
 * above its antenna than that, is refused, and so is any at a station without a DME; 0 on a leg to the station
 * means over it. An arc: see `arcProblems`.
 */
export function checkLeg(leg: Leg, field = 'leg'): Result<Leg> {
  const station = checkStation(leg.station, `${field}.station`);
  const problems = [
    ...(station.ok ? [] : station.problem),
    ...rangeProblems(`${field}.courseDeg`, leg.courseDeg, COURSE),
    ...altitudeProblems(leg, `${field}.altitudeFt`),
    ...(leg.arc ? arcProblems(leg, field) : endProblems(leg, `${field}.endDmeNm`)),
  ];
  if (!station.ok || problems.length > 0) return refuse(problems);
  const arc = leg.arc && { ...leg.arc, toRadialDeg: wrap360(leg.arc.toRadialDeg) };
  return accept({
    ...leg,
    station: station.value,
    courseDeg: wrap360(leg.courseDeg),
    ...(arc === undefined ? {} : { arc }),
  });
}

function altitudeProblems({ altitudeFt, station }: Leg, field: string): FieldProblem[] {
  const problems = rangeProblems(field, altitudeFt, ALTITUDE);
  if (problems.length > 0 || !(altitudeFt <= station.elevationFt)) return problems;
  const expected = `an altitude above the station, which stands at ${station.elevationFt} ft`;
  return [{ field, expected, got: `${altitudeFt}` }];
}

function endProblems({ endDmeNm, direction, station, altitudeFt }: Leg, field: string) {
  if (endDmeNm === undefined) return [];
  const problems = rangeProblems(field, endDmeNm, END_DME);
  const isOverStation = direction === 'to' && endDmeNm === 0;
  if (problems.length > 0 || isOverStation) return problems;
  if (!station.hasDme) {
    if (endDmeNm === 0) return [];
    return [{ field, expected: 'a station with a DME, or no end', got: `${endDmeNm}` }];
  }
  const heightNm = (altitudeFt - (station.dme ?? station).elevationFt) / FT_PER_NM;
  if (!(endDmeNm < heightNm)) return [];
  const least = (Math.ceil(heightNm * 10) / 10).toFixed(1);
  const expected =
    `at least ${least} NM: DME is slant range, and at this altitude it never shows less than ` +
    'the height above its antenna';
  return [{ field, expected, got: `${endDmeNm}` }];
}
