import { describe, expect, test } from 'vitest';
import { geodesicTo } from '../../src/earth/geodesic.ts';
import { slantFromGround } from '../../src/station/slant-range.ts';
import slips from './data/known-slips.json' with { type: 'json' };

describe('printed slips: the list in known-slips.json', () => {
  test('every one names its source and the reason why it is not tested against', () => {
    for (const { source, printed, reason } of slips.rows) {
      expect(Math.min(source.length, printed.length, reason.length)).toBeGreaterThan(5);
    }
  });

  test('4.6 (Instrument Flying Handbook 9-19): 3,000 ft and 0.5 NM are 0.70 NM of slant range, not 0.6', () => {
    expect(slantFromGround(0.5, 3_000)).toBeCloseTo(0.7, 2);
  });

  test('11.36 (Williams): the sphere’s 2,144 NM from LAX to JFK differ from the ellipsoid by 0.1 to 0.5 %', () => {
    const { distanceNm } = geodesicTo(
      { latitudeDeg: 33.95, longitudeDeg: -118.4 },
      { latitudeDeg: 40 + 38 / 60, longitudeDeg: -73 - 47 / 60 },
    );
    expect(Math.abs(distanceNm / 2_143.73 - 1)).toBeGreaterThan(0.001);
    expect(Math.abs(distanceNm / 2_143.73 - 1)).toBeLessThan(0.005);
  });
});
