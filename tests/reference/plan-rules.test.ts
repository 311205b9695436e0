import { describe, expect, it, test } from 'vitest';
import { fitsCruisingLevel, nextCruisingLevels } from '../../src/leg/route/cruising-level.ts';
import { fuelNeeded } from '../../src/leg/route/fuel-reserve.ts';
import { serviceVolumeNm } from '../../src/station/library/service-volume.ts';
import { receptionNm } from '../../src/station/library/reception.ts';

describe('standard service volumes: FAA AIM 1-1-8', () => {
  test.each([
    ['T', 1_000, 25],
    ['T', 12_000, 25],
    ['T', 12_001, null],
    ['L', 999, null],
    ['L', 1_000, 40],
    ['L', 18_000, 40],
    ['L', 18_001, null],
    ['H', 14_499, 40],
    ['H', 14_500, 100],
    ['H', 18_000, 130],
    ['H', 45_000, 130],
    ['H', 45_001, 100],
    ['H', 60_000, 100],
    ['VL', 4_999, 40],
    ['VL', 5_000, 70],
    ['VL', 17_999, 70],
    ['VL', 18_000, null],
    ['VH', 4_999, 40],
    ['VH', 5_000, 70],
    ['VH', 14_500, 100],
    ['VH', 30_000, 130],
  ] as const)('class %s at %i ft above the antenna: %s NM', (serviceClass, heightFt, nm) => {
    expect(serviceVolumeNm(heightFt, serviceClass)).toBe(nm);
  });

  it('is never farther than the horizon (1.23 sqrt h: 39 NM for 1,000 ft, training page pittspecials.com)', () => {
    expect(receptionNm({ elevationFt: 0, serviceClass: 'L' }, 1_000)).toBeCloseTo(38.9, 1);
    expect(receptionNm({ elevationFt: 0, serviceClass: 'L' }, 4_000)).toBe(40);
  });
});

describe('VFR cruising levels: 14 CFR 91.159; ICAO Annex 2, 4.7', () => {
  test.each([
    ['us', 0, 3_500, true],
    ['us', 179, 5_500, true],
    ['us', 179, 4_500, false],
    ['us', 180, 4_500, true],
    ['us', 359, 6_500, true],
    ['us', 360, 7_500, true],
    ['us', 90, 5_000, false],
    ['us', 90, 3_000, null],
    ['us', 90, 18_500, null],
    ['icao', 90, 11_500, true],
    ['icao', 270, 10_500, true],
    ['icao', 270, 9_500, false],
    ['none', 270, 9_500, null],
  ] as const)('%s, %i degrees, %i ft: %s', (rule, directionDeg, altitudeFt, fits) => {
    expect(fitsCruisingLevel(rule, directionDeg, altitudeFt)).toBe(fits);
  });

  test.each([
    ['us', 90, 4_500, [3_500, 5_500]],
    ['us', 270, 5_500, [4_500, 6_500]],
    // 3,500 and 4,500 are the first of the table: nothing lies below them.
    ['us', 90, 3_200, [3_500]],
    ['icao', 270, 3_600, [4_500]],
    // The US rule ends below 18,000: 17,500 and 16,500 are the last.
    ['us', 90, 17_600, [17_500]],
    ['us', 270, 17_500, [16_500]],
    ['icao', 270, 17_500, [16_500, 18_500]],
    ['none', 270, 5_500, []],
  ] as const)(
    '%s, %i degrees, %i ft: next to it lie %j',
    (rule, directionDeg, altitudeFt, levels) => {
      expect(nextCruisingLevels(rule, directionDeg, altitudeFt)).toEqual(levels);
      for (const levelFt of levels)
        expect(fitsCruisingLevel(rule, directionDeg, levelFt)).toBe(true);
    },
  );

  it('never names as lower a level that is higher, nor one that does not fit', () => {
    for (let altitudeFt = 3_001; altitudeFt < 18_000; altitudeFt += 37) {
      for (const directionDeg of [0, 179, 180, 359]) {
        if (fitsCruisingLevel('us', directionDeg, altitudeFt) !== false) continue;
        const levels = nextCruisingLevels('us', directionDeg, altitudeFt);
        expect(levels.length).toBeGreaterThan(0);
        expect(levels.filter((levelFt) => levelFt < altitudeFt).length).toBeLessThanOrEqual(1);
        expect(levels.filter((levelFt) => levelFt > altitudeFt).length).toBeLessThanOrEqual(1);
        for (const levelFt of levels)
          expect(fitsCruisingLevel('us', directionDeg, levelFt)).toBe(true);
      }
    }
  });
});

describe('fuel: Pilot’s Handbook 16-12 (400 NM at 100 kt, 5 gal/h) with the reserves of 14 CFR 91.151', () => {
  it('is 20 gal for the flight, 22.5 by day, 23.75 by night', () => {
    expect(fuelNeeded(20, 5, 'us-day').total).toBeCloseTo(22.5, 9);
    expect(fuelNeeded(20, 5, 'us-night').total).toBeCloseTo(23.75, 9);
    expect(fuelNeeded(20, 5, 'us-rotorcraft').reserve).toBeCloseTo(5 / 3, 9);
  });
});

describe('final reserves for VFR: Part-NCO (UK Air Ops consolidated text, p. 684; flynqy.co.uk fuel minima)', () => {
  test.each([
    ['eu-local', 10],
    ['eu-day', 30],
    ['eu-night', 45],
  ] as const)('%s keeps %i minutes', (rule, minutes) => {
    expect(fuelNeeded(0, 60, rule).reserve).toBeCloseTo(minutes, 9);
  });
});
