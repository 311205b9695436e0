import { describe, expect, test } from 'vitest';
import { magneticDeg, stationDeg, trueDeg } from '../../src/base/bearing.ts';
import { magneticFromTrue, trueFromMagnetic } from '../../src/earth/norths.ts';
import { stationFromTrue, trueFromStation } from '../../src/station/radial.ts';
import norths from './data/norths.json' with { type: 'json' };

describe('norths: Pilot’s Handbook of Aeronautical Knowledge 16-7 to 16-20, EASA question bank', () => {
  test.each(norths.magnetic)(
    '$item: $true true, variation $variation: $magnetic magnetic',
    (row) => {
      expect(magneticFromTrue(trueDeg(row.true), row.variation)).toBe(row.magnetic);
      expect(trueFromMagnetic(magneticDeg(row.magnetic), row.variation)).toBe(row.true % 360);
    },
  );
});

describe('radials: Eurocontrol AIXM coding rules on station declination', () => {
  test.each(norths.radials)(
    '$item: radial $radial, declination $declination: $true true',
    (row) => {
      const station = { declinationDegEast: row.declination };
      const direction = trueFromStation(stationDeg(row.radial), station);
      expect(direction).toBe(row.true);
      expect(stationFromTrue(direction, station)).toBe(row.radial);
      expect(magneticFromTrue(direction, row.variation)).toBe(row.magnetic);
    },
  );
});
