import { describe, expect, test } from 'vitest';
import {
  closingTurnDeg,
  offCourseNm,
  oneInSixtyDeg,
  oneInSixtyNm,
} from '../../src/leg/off-course.ts';
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

describe('back onto the line at its end: Andersen, PPL(A) theory, p. 913; FAA items (from memory)', () => {
  test.each([
    { offNm: 1, flownNm: 20, toGoNm: 40, turnDeg: 4.5, source: 'Andersen' },
    { offNm: 11, flownNm: 141, toGoNm: 71, turnDeg: 14, source: 'FAA item' },
    { offNm: 8, flownNm: 150, toGoNm: 160, turnDeg: 6, source: 'FAA item' },
  ])('$source: $offNm NM off after $flownNm NM, $toGoNm NM to go: $turnDeg degrees', (row) => {
    // The items are answered in whole degrees.
    expectNear(closingTurnDeg(row.offNm, row.flownNm, row.toGoNm) ?? NaN, row.turnDeg, 0.5, 'turn');
  });

  test('halfway it is twice the angle off', () => {
    expectNear(closingTurnDeg(oneInSixtyNm(2, 15), 15, 15) ?? NaN, 4, 1e-9, 'degrees');
  });

  test('there is none where nothing was flown, or nothing is left', () => {
    expect(closingTurnDeg(1, 0, 20)).toBeNull();
    expect(closingTurnDeg(1, 20, 0)).toBeNull();
  });
});
