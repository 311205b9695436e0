import { turnDeg } from '../base/angle.ts';
import { rangeProblems } from '../base/in-range.ts';
import type { FieldProblem } from '../base/result.ts';
import { FT_PER_NM } from '../base/units.ts';
import type { DmeArc, Leg } from './leg.ts';

const ARC_DME = { least: 0, most: 250, what: 'a DME distance in NM' };
const RADIAL = { least: 0, most: 360, what: 'a radial in degrees' };
/** Nearer than this to the radial on which it is joined an arc has no length, degrees. */
const LEAST_SWEEP_DEG = 1;

/**
 * What is wrong with the arc of a leg; empty where there is none or it can be flown.
 *
 * `field`: where the leg stands in the input. An arc needs a DME, a distance that the DME can show at the leg's
 * altitude, and a radial other than the one on which it is joined; it ends there and has no `endDmeNm`.
 */
export function arcProblems(leg: Leg, field: string): readonly FieldProblem[] {
  const { arc } = leg;
  if (arc === undefined) return [];
  return [
    ...distanceProblems(leg, arc, `${field}.arc.dmeNm`),
    ...radialProblems(leg, arc, `${field}.arc.toRadialDeg`),
    ...(leg.endDmeNm === undefined ? [] : [endNotWanted(leg.endDmeNm, `${field}.endDmeNm`)]),
  ];
}

function distanceProblems(
  { station, altitudeFt }: Leg,
  { dmeNm }: DmeArc,
  field: string,
): readonly FieldProblem[] {
  if (!station.hasDme) {
    const expected = 'a station with a DME: an arc is flown by its distance';
    return [{ field, expected, got: 'a station without' }];
  }
  const problems = rangeProblems(field, dmeNm, ARC_DME);
  const heightNm = (altitudeFt - (station.dme ?? station).elevationFt) / FT_PER_NM;
  if (problems.length > 0 || !(dmeNm <= heightNm)) return problems;
  const least = (Math.floor(heightNm * 10) / 10 + 0.1).toFixed(1);
  const expected =
    `at least ${least} NM: DME is slant range, and at this altitude it never shows less than ` +
    'the height above its antenna';
  return [{ field, expected, got: `${dmeNm}` }];
}

/** The radial on which an arc is joined, degrees by the station's declination, not wrapped. */
export function joiningRadialDeg({ courseDeg, direction }: Leg): number {
  return direction === 'to' ? courseDeg + 180 : courseDeg;
}

function radialProblems(leg: Leg, { toRadialDeg }: DmeArc, field: string): readonly FieldProblem[] {
  const problems = rangeProblems(field, toRadialDeg, RADIAL);
  const sweptDeg = Math.abs(turnDeg(joiningRadialDeg(leg), toRadialDeg));
  if (problems.length > 0 || !(sweptDeg < LEAST_SWEEP_DEG)) return problems;
  const expected = 'a radial other than the one on which the arc is joined';
  return [{ field, expected, got: `${toRadialDeg}` }];
}

function endNotWanted(endDmeNm: number, field: string): FieldProblem {
  return { field, expected: 'nothing: an arc ends on its radial', got: `${endDmeNm}` };
}
