import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turnDeg } from '../../src/base/angle.ts';
import { stationDeg } from '../../src/base/bearing.ts';
import { placeAt } from '../../src/earth/geodesic.ts';
import { flagOn } from '../../src/panel/flag.ts';
import { indicationAt } from '../../src/panel/indication.ts';
import { needleDegOn, needleDotsOn, radialShown } from '../../src/panel/needle.ts';
import { trueFromStation } from '../../src/station/radial.ts';
import { slantFromGround } from '../../src/station/slant-range.ts';
import { anyRadial, anyScale, anyStation, within } from './flying.ts';

describe('needle and flag over the whole circle', () => {
  test('needle and flag together give the radial back, unless off or at full deflection', () => {
    fc.assert(
      fc.property(anyRadial, anyRadial, anyScale, (radial, courseSet, scale) => {
        const flag = flagOn(radial, courseSet);
        const dots = needleDotsOn(radial, courseSet, scale);
        const shown = radialShown({ courseSet, needleDots: dots, flag }, scale);
        if (flag === 'off' || Math.abs(dots) >= scale.dotsFullScale) {
          expect(shown).toBeNull();
        } else {
          expect(shown === null ? NaN : turnDeg(radial, shown)).toBeCloseTo(0, 6);
        }
      }),
    );
  });

  test('the reciprocal course turns both needle and flag round', () => {
    const other = { to: 'from', from: 'to', off: 'off' } as const;
    fc.assert(
      fc.property(anyRadial, anyRadial, anyScale, (radial, courseSet, scale) => {
        fc.pre(Math.abs(Math.abs(Math.abs(turnDeg(courseSet, radial)) - 90) - 10) > 1e-6);
        const reciprocal = stationDeg(courseSet + 180);
        const dots = needleDotsOn(radial, courseSet, scale);
        expect(needleDotsOn(radial, reciprocal, scale)).toBeCloseTo(-dots, 6);
        expect(flagOn(radial, reciprocal)).toBe(other[flagOn(radial, courseSet)]);
      }),
    );
  });

  test('mirrored about the course the needle changes sides and the flag stays', () => {
    fc.assert(
      fc.property(anyRadial, within(-180, 180), anyScale, (courseSet, off, scale) => {
        fc.pre(Math.abs(Math.abs(Math.abs(off) - 90) - 10) > 1e-6);
        const right = stationDeg(courseSet + off);
        const left = stationDeg(courseSet - off);
        expect(needleDotsOn(right, courseSet, scale)).toBeCloseTo(
          -needleDotsOn(left, courseSet, scale),
          6,
        );
        expect(flagOn(right, courseSet)).toBe(flagOn(left, courseSet));
      }),
    );
  });

  test('turning radial and course by the same angle changes nothing', () => {
    fc.assert(
      fc.property(anyRadial, anyRadial, within(0, 360), (radial, courseSet, turn) => {
        expect(needleDegOn(stationDeg(radial + turn), stationDeg(courseSet + turn))).toBeCloseTo(
          needleDegOn(radial, courseSet),
          6,
        );
      }),
    );
  });

  test('the needle never passes full deflection', () => {
    fc.assert(
      fc.property(anyRadial, anyRadial, anyScale, (radial, courseSet, scale) => {
        expect(Math.abs(needleDotsOn(radial, courseSet, scale))).toBeLessThanOrEqual(
          scale.dotsFullScale,
        );
      }),
    );
  });
});

describe('the panel at a place', () => {
  test('an aircraft on a radial is shown on that radial, at its slant range', () => {
    fc.assert(
      fc.property(
        anyStation,
        anyRadial,
        within(-9, 9),
        within(8, 70),
        (station, courseSet, off, nm) => {
          const radial = stationDeg(courseSet + off);
          const place = placeAt(station, trueFromStation(radial, station), nm);
          const scale = { degreesPerDot: 2, dotsFullScale: 5 };
          const seen = indicationAt(place, station.elevationFt + 5_000, {
            station,
            courseSet,
            scale,
          });
          expect(seen.flag).toBe('from');
          expect(seen.needleDots).toBeCloseTo(-off / 2, 5);
          expect(seen.dmeNm).toBeCloseTo(slantFromGround(nm, 5_000), 5);
        },
      ),
    );
  });
});
