import { describe, expect, it } from 'vitest';
import { airPath } from '../../src/track/air-path.ts';
import type { StateMean } from '../../src/track/belief.ts';
import { boundCorrection } from '../../src/track/bound.ts';
import { correct } from '../../src/track/correct.ts';
import {
  diagonal,
  element,
  lowerRoot,
  transform,
  transformByMotion,
} from '../../src/track/matrix.ts';
import { meanOf, vectorOf } from '../../src/track/mean-vector.ts';
import { moved } from '../../src/track/motion.ts';
import { motionJacobian } from '../../src/track/motion-jacobian.ts';
import { millsRatio, normalBelow } from '../../src/track/normal.ts';
import { predictLinearised } from '../../src/track/predict.ts';
import { predictBySpread } from '../../src/track/predict-spread.ts';
import { dmeExpected } from '../../src/track/update-dme.ts';

const MEAN: StateMean = {
  lnRange: Math.log(12),
  bearingRad: 2.1,
  windEastKt: 14,
  windNorthKt: -9,
  vorBiasDeg: 0.7,
  airspeedErrorKt: -2,
  headingErrorDeg: 1.5,
};

/** Column by column derivative from differences to both sides. */
function byDifferences(
  mean: StateMean,
  of: (mean: StateMean) => readonly number[],
): readonly (readonly number[])[] {
  return vectorOf(mean).map((_, column) => {
    const step = 1e-5;
    const shifted = (by: number): readonly number[] =>
      of(meanOf(vectorOf(mean).map((each, index) => (index === column ? each + by : each))));
    const up = shifted(step);
    const down = shifted(-step);
    return up.map((each, row) => (each - (down[row] ?? 0)) / (2 * step));
  });
}

describe('the motion between readings', () => {
  const path = airPath(40, [{ atS: 0, toDeg: 75 }], 60);

  it('has the derivative that small differences show', () => {
    const exact = motionJacobian(MEAN, moved(MEAN, path, 95), path, 95);
    const differences = byDifferences(MEAN, (mean) => vectorOf(moved(mean, path, 95)));
    for (let row = 0; row < 7; row += 1) {
      for (let column = 0; column < 7; column += 1) {
        expect(element(exact, row, column)).toBeCloseTo(differences[column]?.[row] ?? NaN, 6);
      }
    }
  });

  it('carries a covariance by the short way as by the whole product', () => {
    const a = motionJacobian(MEAN, moved(MEAN, path, 95), path, 95);
    const covariance = transform(a, diagonal([0.02, 0.01, 200, 300, 2, 9, 4]));
    expect(transformByMotion(a, covariance)).toEqual(transform(a, covariance));
  });

  it('carries a belief the same way linearised and by spread points when the spread is small', () => {
    const belief = { mean: MEAN, covariance: diagonal([1e-4, 1e-4, 4, 4, 1, 1, 1]) };
    const linear = predictLinearised(belief, path, 95);
    const spread = predictBySpread(belief, path, 95);
    expect(spread.mean.lnRange).toBeCloseTo(linear.mean.lnRange, 3);
    expect(spread.mean.bearingRad).toBeCloseTo(linear.mean.bearingRad, 3);
    linear.covariance.forEach((each, index) => {
      expect(Math.abs((spread.covariance[index] ?? NaN) - each)).toBeLessThan(
        0.02 * Math.abs(each) + 1e-3,
      );
    });
  });

  it('flies a quarter circle of the standard-rate radius: 30 s for 90 degrees', () => {
    // Radius of a turn at 3 degrees a second: 60 / pi seconds of flight.
    const turn = airPath(0, [{ atS: 0, toDeg: 90 }], 35);
    expect(turn.endHeadingDeg).toBe(90);
    expect(turn.eastS).toBeCloseTo(60 / Math.PI, 9);
    expect(turn.northS).toBeCloseTo(5 + 60 / Math.PI, 9);
  });

  it('turns through north by the shorter way', () => {
    expect(airPath(350, [{ atS: 0, toDeg: 10 }], 60).endHeadingDeg).toBeCloseTo(370, 9);
    expect(airPath(10, [{ atS: 0, toDeg: 350 }], 60).endHeadingDeg).toBeCloseTo(-10, 9);
  });

  it('breaks off a turn that the time does not allow', () => {
    expect(airPath(0, [{ atS: 0, toDeg: 90 }], 15).endHeadingDeg).toBeCloseTo(30, 9);
  });

  it('flies a second turn from where the first has led', () => {
    const both = airPath(
      0,
      [
        { atS: 0, toDeg: 30 },
        { atS: 40, toDeg: 0 },
      ],
      100,
    );
    expect(both.endHeadingDeg).toBeCloseTo(0, 9);
    expect(both.eastS).toBeGreaterThan(15);
    expect(both.durationS).toBe(100);
  });
});

describe('the DME', () => {
  it('has the derivative that small differences show, also with its antenna elsewhere', () => {
    const dme = { eastNm: 1.5, northNm: -0.7, heightNm: 0.7 };
    const { slope } = dmeExpected(MEAN, dme);
    const differences = byDifferences(MEAN, (mean) => [dmeExpected(mean, dme).slantNm]);
    slope.forEach((each, column) => {
      expect(each).toBeCloseTo(differences[column]?.[0] ?? NaN, 6);
    });
  });
});

describe('normal distribution: table 26.1 of Abramowitz and Stegun, Handbook of Mathematical Functions', () => {
  it.each([
    [0, 0.5],
    [1, 0.841344746],
    [2, 0.977249868],
    [3, 0.998650102],
    [-1, 0.158655254],
    [-3, 0.001349898],
  ])('the part below %d is %d', (z, part) => {
    expect(normalBelow(z)).toBeCloseTo(part, 6);
  });

  it('has a Mills ratio that nears -z far down the tail', () => {
    // Asymptotic series 26.2.12 of the same: ratio = -z (1 + 1/z^2 - ...).
    expect(millsRatio(-30) / 30).toBeCloseTo(1 + 1 / 900, 5);
    expect(Number.isFinite(millsRatio(-200))).toBe(true);
  });
});

describe('a needle on its stop', () => {
  const slope = [0, 1, 0, 0, 0, 0, 0];
  const belief = { mean: { ...MEAN, bearingRad: 0 }, covariance: diagonal([1, 4, 1, 1, 1, 1, 1]) };

  it('changes nothing when it was deep and expected', () => {
    const far = { side: 1, limit: 9.5, expected: 60 } as const;
    expect(boundCorrection(belief, slope, far, 0.3)).toBeNull();
  });

  it('pulls the belief to its side when it was not expected, and never past belief', () => {
    const bound = { side: 1, limit: 1, expected: 0 } as const;
    const correction = boundCorrection(belief, slope, bound, 0);
    const after = correction && correct(belief, correction);
    // Mean and variance of a normal number (sd 2) known to be above half its sd.
    const ratio = 0.352065 / 0.308538;
    expect(after?.mean.bearingRad).toBeCloseTo(2 * ratio, 4);
    expect(after && element(after.covariance, 1, 1)).toBeCloseTo(
      4 * (1 - ratio * (ratio - 0.5)),
      4,
    );
  });
});

describe('the root of a covariance', () => {
  it('gives the covariance back when squared', () => {
    const covariance = [...diagonal([2, 3, 4, 5, 6, 7, 8])];
    covariance[1] = 0.5;
    covariance[7] = 0.5;
    const root = lowerRoot(covariance);
    let sum = 0;
    for (let k = 0; k < 7; k += 1) sum += element(root, 1, k) * element(root, 0, k);
    expect(sum).toBeCloseTo(0.5, 12);
    expect(element(root, 0, 1)).toBe(0);
  });
});
