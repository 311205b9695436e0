import { describe, test } from 'vitest';
import { coneRadiusNm } from '../../src/station/cone.ts';
import { lineOfSightNm } from '../../src/station/line-of-sight.ts';
import { groundFromSlant, slantFromGround } from '../../src/station/slant-range.ts';
import table from './data/station-geometry.json' with { type: 'json' };
import { expectNear } from './near.ts';

describe('slant range: Pilot’s Handbook 16-27, Instrument Flying Handbook 9-19, EASA question bank', () => {
  test.each(table.slants)('$item ($source): $groundNm NM and $heightFt ft: $slantNm NM', (row) => {
    expectNear(slantFromGround(row.groundNm, row.heightFt), row.slantNm, row.tolerance, row.item);
  });

  test('4.2: overhead the DME shows the height above it and the ground distance is nothing', () => {
    for (const heightFt of [1_500, 6_076, 12_000, 40_000]) {
      const overheadNm = slantFromGround(0, heightFt);
      expectNear(overheadNm, heightFt / 6_076, 0.001, '4.2');
      expectNear(groundFromSlant(overheadNm, heightFt), 0, 1e-6, '4.2');
    }
  });

  test('4.3 (ICAO Doc 8168 vol. II, I-4-3 App C): ground is the root of D² - 0.027 h²', () => {
    for (const slantNm of [5, 12, 40, 100]) {
      for (const heightFt of [1_000, 5_000, 20_000]) {
        const printed = Math.sqrt(slantNm ** 2 - 0.027 * (heightFt / 1000) ** 2);
        // 0.027 is 1/6.076² rounded: 0.2 % of the answer.
        expectNear(groundFromSlant(slantNm, heightFt), printed, 0.002 * printed, '4.3');
      }
    }
  });
});

describe('cone: ICAO Doc 8168 vol. I, 2.4.4.1, 50 degrees from the vertical', () => {
  test.each(table.cones)('$item: at $heightFt ft its radius is $radiusNm NM', (row) => {
    expectNear(coneRadiusNm(row.heightFt), row.radiusNm, row.tolerance, row.item);
  });
});

describe('line of sight: 1.23 x (sqrt h1 + sqrt h2), EASA question bank and VHF range table', () => {
  test.each(table.sights)('$item ($source): $heightFt ft and $antennaFt ft: $rangeNm NM', (row) => {
    expectNear(lineOfSightNm(row.heightFt, row.antennaFt), row.rangeNm, row.tolerance, row.item);
  });
});
