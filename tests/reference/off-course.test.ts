import { describe, test } from 'vitest';
import { offCourseNm, oneInSixtyDeg, oneInSixtyNm } from '../../src/leg/off-course.ts';
import table from './data/off-course.json' with { type: 'json' };
import { expectNear } from './near.ts';

describe('60-to-1: Pilot’s Handbook 16-27, US Navy P-871, FAA items', () => {
  test.each(table.distances)(
    '$item ($source): $offDeg degrees at $rangeNm NM: $offNm NM',
    (row) => {
      expectNear(oneInSixtyNm(row.offDeg, row.rangeNm), row.offNm, row.tolerance, row.item);
    },
  );

  test.each(table.distances)(
    '$item: the triangle gives the rule’s $offNm NM and at most 5 % more',
    (row) => {
      // pi/180 against 1/60: the rule is 4.7 % small.
      const exact = offCourseNm(row.offDeg, row.rangeNm);
      expectNear(exact, row.offNm, 0.05 * row.offNm + row.tolerance, row.item);
    },
  );
});

describe('1-in-60: Andersen, PPL(A) theory, p. 913; FAA items', () => {
  test.each(table.angles)(
    '$item ($source): $offNm NM in $distanceNm NM: $angleDeg degrees',
    (row) => {
      expectNear(oneInSixtyDeg(row.offNm, row.distanceNm), row.angleDeg, row.tolerance, row.item);
    },
  );
});
